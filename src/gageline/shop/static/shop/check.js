// Readings of an inspection go through the queue; what they are judged as comes back from the shop.
import { keep, sentSince, start, waiting } from "./queue.js";

const work = document.getElementById("work");
const copy = Number(work.dataset.copy);
const card = work.dataset.card;
const title = document.querySelector("h1").textContent.trim().replace(/\s+/g, " ");
const isMine = (one) => (one.copy ?? one.piece) === copy && (one.card ?? one.of) === card;
const last = document.querySelector(".tick");
const kinds = { rework: "warning", ask: "error" };

function say(task, words) {
  const place = document.getElementById(`say-${task}`);
  if (!place) return;
  place.textContent = words;
  place.className = `said ${kinds[words.split(/[ :]/)[0]] || "note"}`;
}

function typed(one, words) {
  const field = document.getElementById(`f-${one.task}`);
  if (field) { field.value = one.note; say(one.task, words); }
}

function read(field) {
  const name = document.querySelector(`label[for="${field.id}"]`).textContent.trim();
  say(field.dataset.task, "kept on this tablet");
  keep({ copy, card, task: field.dataset.task, done: true, note: field.value, name: `${title}, ${name}` });
}

for (const one of sentSince(Number(work.dataset.now)).filter(isMine)) typed(one, "kept by the shop");
for (const one of waiting().filter(isMine)) typed(one, "kept on this tablet");
work.addEventListener("change", (event) => event.target.matches(".read input[data-task]") && read(event.target));
work.addEventListener("submit", (event) => {
  event.preventDefault();
  if (event.target !== last) return;
  const done = last.elements.done.value === "1";
  keep({ copy, card, task: last.elements.task.value, done, note: last.elements.note.value, name: `${title}, to the Gate` });
  document.querySelector(".by").textContent = done ? "let go by you, not sent yet" : "";
});
start(work.dataset.ticks, {
  counted: (one, text) => isMine(one) && say(one.task, text),
  refused: (one, text) => isMine(one) && say(one.task, text),
  settled: (sent) => {
    document.body.dispatchEvent(new Event("settled"));
    if (sent.some((one) => isMine(one) && one.task === last?.elements.task.value)) location.reload();
  },
});
