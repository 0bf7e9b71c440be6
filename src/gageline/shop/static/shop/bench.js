// One step at a time, at the saw, the bench and the fit; what is ticked or read goes through the queue.
import { keep, sentSince, start, waiting, who } from "./queue.js";

const work = document.getElementById("work");
const steps = [...document.querySelectorAll(".step")];
const onward = document.getElementById("onward"); // shown once all is done
const copy = Number(work.dataset.copy);
const card = work.dataset.card;
const isMine = (one) => (one.copy ?? one.piece) === copy && (one.card ?? one.of) === card;
const isDone = (step) => step.classList.contains("done");
const title = document.querySelector("h1").textContent.trim().replace(/\s+/g, " ");
const FRESH = /^(stick-|saw-take|saw-rest)/; // after these the shop has more to say: readings, a heat, a drop
const by = (one) => (one.who === who ? "ticked by you" : "ticked by another on this tablet");
const OPEN = "gageline-stick-open";
const reads = document.querySelector("#stick details");
let at = 0;
let stale = false; // the shop has more to say than this page shows
let kept = null; // the field that was read last

function show(index, focus) {
  at = Math.max(0, Math.min(index, steps.length - 1));
  steps.forEach((step, number) => { step.hidden = number !== at; });
  document.getElementById("where").textContent = `${at + 1} of ${steps.length}`;
  document.getElementById("back").disabled = at === 0;
  document.getElementById("next").disabled = at === steps.length - 1;
  showCut(steps[at].id);
  if (focus && reads) reads.open = false; // who walks on has measured
  if (focus) { steps[at].focus({ preventScroll: true }); window.scrollTo(0, 0); }
  // on a phone the picture of a sheet may leave no room for what is to be done
  if (steps[at].getBoundingClientRect().top > innerHeight * 0.6) steps[at].scrollIntoView();
}

// At the saw the piece that is cut now stands out in the picture of its stick.
function showCut(task) {
  for (const piece of document.querySelectorAll("[data-cut]")) {
    const now = `saw-${piece.dataset.cut}` === task;
    piece.classList.toggle("now", now);
    const box = piece.closest(".scroll");
    if (now) box.scrollLeft += piece.getBoundingClientRect().left - box.getBoundingClientRect().left - 24;
  }
}

function mark(task, done, by) {
  const step = document.getElementById(task);
  if (!step || !steps.includes(step)) return;
  step.classList.toggle("done", done);
  const button = step.querySelector(".tick button");
  if (button) button.textContent = done ? "Take the tick back" : "Done";
  step.querySelector(".by").textContent = by;
  document.getElementById("progress").textContent = `${steps.filter(isDone).length} of ${steps.length}`;
  onward.hidden = !steps.every(isDone);
}

function tick(step) {
  const done = !isDone(step);
  const note = step.querySelector(".tick [name=note]")?.value || "";
  mark(step.id, done, done ? "ticked by you" : "");
  keep({ copy, card, task: step.dataset.task, done, note, name: `${title}, ${step.getAttribute("aria-label")}` });
  if (!done) return;
  const left = [...steps.slice(at + 1), ...steps.slice(0, at)].find((one) => !isDone(one));
  if (left) { show(steps.indexOf(left), true); return; }
  onward.focus({ preventScroll: true });
  window.scrollTo(0, 0);
}

// What was read on the stick in hand: its own readings come from the shop, so they wait for the network.
function measure(field) {
  kept = field;
  document.getElementById("stick-said").textContent = "Kept. The readings for this stick come when the shop has it.";
  keep({ copy, card, task: field.dataset.task, done: true, note: field.value, name: `${title}, ${field.dataset.task}` });
}

// What the shop has to say now is shown at once, but never while the next reading is being typed.
function renew() {
  const on = document.activeElement;
  const typing = document.querySelector("dialog[open]") || (on !== kept && on?.matches(".stick-reads :is(input, select)"));
  if (!stale) return;
  if (!typing) {
    if (reads?.open) sessionStorage.setItem(OPEN, location.pathname); // there is more to read on this stick
    location.reload();
    return;
  }
  document.getElementById("stick-said").textContent = "The shop has it. The readings for this stick come when you leave these fields.";
}

for (const one of sentSince(Number(work.dataset.now)).filter(isMine)) mark(one.task, one.done, one.done ? by(one) : "");
for (const one of waiting().filter(isMine)) mark(one.task, one.done, one.done ? `${by(one)}, not sent yet` : "");
if (reads && sessionStorage.getItem(OPEN) === location.pathname) reads.open = true;
sessionStorage.removeItem(OPEN);
work.addEventListener("submit", (event) => {
  event.preventDefault();
  if (!event.target.matches(".tick")) return;
  tick(event.target.closest(".step"));
});
document.addEventListener("focusout", () => setTimeout(renew, 0));
work.addEventListener("change", (event) => event.target.dataset.task && measure(event.target));
if (steps.length) {
  work.classList.add("stepping");
  document.querySelector(".walk").hidden = false;
  document.getElementById("back").addEventListener("click", () => show(at - 1, true));
  document.getElementById("next").addEventListener("click", () => show(at + 1, true));
  const asked = steps.findIndex((step) => `#${step.id}` === location.hash);
  const first = steps.findIndex((step) => !isDone(step));
  show(asked >= 0 ? asked : first >= 0 ? first : steps.length - 1, false);
}
// The next card is opened beforehand, so that it is kept for when there is no network.
const next = document.getElementById("onward-next");
if (next && steps.some((step) => !isDone(step))) fetch(next.href, { priority: "low" }).catch(() => {});
start(work.dataset.ticks, {
  refused: (one) => isMine(one) && mark(one.task, !one.done, ""),
  settled: (sent) => {
    stale ||= sent.some((one) => isMine(one) && FRESH.test(one.task));
    renew();
  },
});
