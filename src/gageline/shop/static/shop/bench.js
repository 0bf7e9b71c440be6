// One step at a time, and ticks that wait here while there is no network.
"use strict";
(() => {
  const work = document.getElementById("work");
  const steps = [...document.querySelectorAll(".step")];
  const net = document.getElementById("net");
  const who = Number(document.body.dataset.who);
  const copy = Number(work.dataset.copy);
  const card = work.dataset.card;
  const QUEUE = "gageline-ticks";
  const TROUBLE = "gageline-trouble";
  const SENT = "gageline-sent"; // what a page that was kept before does not show yet, by the shop's clock
  let at = 0;
  let sending = false;

  const read = (name) => JSON.parse(localStorage.getItem(name) || "[]");
  const write = (name, items) => localStorage.setItem(name, JSON.stringify(items));
  const mine = () => read(QUEUE).filter((tick) => tick.who === who);
  const isDone = (step) => step.classList.contains("done");
  const token = () => (document.cookie.match(/(?:^|; )csrftoken=([^;]+)/) || [])[1] || "";

  function newKey() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  }

  function show(index, focus) {
    at = Math.max(0, Math.min(index, steps.length - 1));
    steps.forEach((step, number) => { step.hidden = number !== at; });
    document.getElementById("where").textContent = `${at + 1} of ${steps.length}`;
    document.getElementById("back").disabled = at === 0;
    document.getElementById("next").disabled = at === steps.length - 1;
    if (focus) { steps[at].focus({ preventScroll: true }); window.scrollTo(0, 0); }
  }

  function mark(step, done, by) {
    step.classList.toggle("done", done);
    const button = step.querySelector(".tick button");
    if (button) button.textContent = done ? "Take the tick back" : "Done";
    step.querySelector(".by").textContent = by;
    document.getElementById("progress").textContent = `${steps.filter(isDone).length} of ${steps.length}`;
  }

  function tell(text, kind) {
    const trouble = read(TROUBLE);
    net.className = trouble.length ? "trouble" : kind || "";
    net.replaceChildren();
    if (text) net.append(Object.assign(document.createElement("p"), { textContent: text }));
    for (const one of trouble) {
      net.append(Object.assign(document.createElement("p"), { textContent: one }));
    }
    if (trouble.length) {
      const seen = Object.assign(document.createElement("button"), { textContent: "Seen", type: "button" });
      seen.addEventListener("click", () => { write(TROUBLE, []); location.reload(); });
      net.append(seen);
    }
  }

  function waiting(words) {
    const count = mine().length;
    const others = read(QUEUE).length - count;
    const left = others ? ` ${others} ticks of somebody else wait for that person to sign in.` : "";
    if (count) tell(`${words} ${count} ${count === 1 ? "tick waits" : "ticks wait"} on this tablet.${left}`, "waits");
    else tell(left.trim(), others ? "waits" : "");
  }

  async function send() {
    const ticks = mine().slice(0, 50);
    if (sending) return;
    if (!ticks.length) { waiting(""); return; }
    sending = true;
    try {
      const response = await fetch(work.dataset.ticks, {
        method: "POST",
        headers: { "Content-Type": "application/json", "Accept": "application/json", "X-CSRFToken": token() },
        body: JSON.stringify({ ticks }),
      });
      if (response.ok) settle(await response.json());
      else if (response.status === 401 || response.status === 403) waiting("Sign in again to send them.");
      else waiting(`The shop did not take them (${response.status}), trying again.`);
    } catch (wrong) {
      waiting("No network.");
    } finally {
      sending = false;
    }
  }

  function settle({ answers, now }) {
    const keys = new Set(answers.map((answer) => answer.key));
    const sent = read(QUEUE).filter((tick) => keys.has(tick.key));
    write(QUEUE, read(QUEUE).filter((tick) => !keys.has(tick.key)));
    const trouble = read(TROUBLE);
    for (const answer of answers.filter((one) => one.state === "conflict")) {
      const tick = sent.find((one) => one.key === answer.key);
      trouble.push(`Not counted, ${tick ? tick.name : "a tick"}: ${answer.text}.`);
      if (tick && tick.copy === copy && tick.card === card) {
        const step = document.getElementById(tick.task);
        if (step) mark(step, !tick.done, "");
      }
    }
    write(TROUBLE, trouble);
    const counted = sent.filter((tick) => answers.some((one) => one.key === tick.key && one.state === "done"));
    const news = counted.map(({ copy: piece, card: of, task, done }) => ({ piece, of, task, done, now }));
    write(SENT, [...read(SENT), ...news].slice(-500));
    if (mine().length) setTimeout(send, 0);
    else {
      waiting("");
      fetch(location.pathname).catch(() => {}); // the kept page now has what was sent
    }
  }

  function tick(step) {
    const done = !isDone(step);
    const name = `${document.querySelector("h1").textContent.trim().replace(/\s+/g, " ")}, ${step.getAttribute("aria-label")}`;
    write(QUEUE, [...read(QUEUE), {
      key: newKey(), who, copy, card, task: step.dataset.task, done, at: new Date().toISOString(), name,
    }]);
    mark(step, done, done ? "ticked by you" : "");
    if (done && at < steps.length - 1) show(at + 1, true);
    send();
  }

  const rendered = Number(work.dataset.now);
  for (const one of read(SENT).filter((item) => item.piece === copy && item.of === card && item.now >= rendered)) {
    const step = document.getElementById(one.task);
    if (step) mark(step, one.done, one.done ? "ticked by you" : "");
  }
  for (const one of read(QUEUE).filter((item) => item.copy === copy && item.card === card)) {
    const step = document.getElementById(one.task);
    if (step) mark(step, one.done, one.done ? "ticked by you, not sent yet" : "");
  }
  work.addEventListener("submit", (event) => {
    if (!event.target.matches(".tick")) return;
    event.preventDefault();
    tick(event.target.closest(".step"));
  });
  if (steps.length) {
    work.classList.add("stepping");
    document.querySelector(".walk").hidden = false;
    document.getElementById("back").addEventListener("click", () => show(at - 1, true));
    document.getElementById("next").addEventListener("click", () => show(at + 1, true));
    const asked = steps.findIndex((step) => `#${step.id}` === location.hash);
    const first = steps.findIndex((step) => !isDone(step));
    show(asked >= 0 ? asked : first >= 0 ? first : steps.length - 1, false);
  }
  window.addEventListener("online", send);
  setInterval(send, 5000);
  send();
})();
