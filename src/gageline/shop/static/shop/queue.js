// What is ticked or read waits on this tablet while there is no network, and goes up in order, once.
const QUEUE = "gageline-ticks";
const TROUBLE = "gageline-trouble";
const SENT = "gageline-sent"; // what a page that was kept before does not show yet, by the shop's clock
const net = document.getElementById("net");
export const who = Number(document.body.dataset.who);
let address = "";
let heard = {};
let sending = false;
let told = []; // what was sent since the shop last had all of it

const read = (name) => JSON.parse(localStorage.getItem(name) || "[]");
const write = (name, items) => localStorage.setItem(name, JSON.stringify(items));
const mine = () => read(QUEUE).filter((tick) => tick.who === who);
const token = () => (document.cookie.match(/(?:^|; )csrftoken=([^;]+)/) || [])[1] || "";

export const waiting = () => read(QUEUE);
export const sentSince = (time) => read(SENT).filter((one) => one.now >= time);

// Keep something that was done: { copy, card, task, done, name } and what was typed beside it as `note`.
export function keep(tick) {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const key = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  write(QUEUE, [...read(QUEUE), { key, who, at: new Date().toISOString(), ...tick }]);
  send();
}

// Begin to send; `counted(tick, text)`, `refused(tick, text)` and `settled(ticks)` are told what became of it.
export function start(to, listeners) {
  [address, heard] = [to, listeners];
  window.addEventListener("online", send);
  setInterval(send, 5000);
  send();
}

function tell(text, kind) {
  const trouble = read(TROUBLE);
  net.className = trouble.length ? "trouble" : kind || "";
  net.replaceChildren();
  for (const words of [text, ...trouble].filter(Boolean)) {
    net.append(Object.assign(document.createElement("p"), { textContent: words }));
  }
  if (trouble.length) {
    const seen = Object.assign(document.createElement("button"), { textContent: "Seen", type: "button" });
    seen.addEventListener("click", () => { write(TROUBLE, []); location.reload(); });
    net.append(seen);
  }
}

function say(words) {
  const count = mine().length;
  const others = read(QUEUE).length - count;
  const left = others ? ` ${others} ticks of somebody else wait for that person to sign in.` : "";
  if (count) tell(`${words} ${count} ${count === 1 ? "tick waits" : "ticks wait"} on this tablet.${left}`, "waits");
  else tell(left.trim(), others ? "waits" : "");
}

async function send() {
  const ticks = mine().slice(0, 50);
  if (sending) return;
  if (!ticks.length) { say(""); return; }
  sending = true;
  try {
    const response = await fetch(address, {
      method: "POST",
      headers: { "Content-Type": "application/json", "Accept": "application/json", "X-CSRFToken": token() },
      body: JSON.stringify({ ticks }),
    });
    if (response.ok) settle(await response.json());
    else if (response.status === 401 || response.status === 403) say("Sign in again to send them.");
    else say(`The shop did not take them (${response.status}), trying again.`);
  } catch (wrong) {
    say("No network.");
  } finally {
    sending = false;
  }
}

function settle({ answers, now }) {
  const before = read(QUEUE);
  const answered = new Map(answers.map((answer) => [answer.key, answer]));
  const sent = before.filter((tick) => answered.has(tick.key));
  write(QUEUE, before.filter((tick) => !answered.has(tick.key)));
  const refused = sent.filter((tick) => answered.get(tick.key).state === "conflict");
  const counted = sent.filter((tick) => answered.get(tick.key).state === "done");
  write(TROUBLE, [...read(TROUBLE), ...refused.map((tick) => `Not counted, ${tick.name}: ${answered.get(tick.key).text}.`)]);
  const news = counted.map(({ copy: piece, card: of, who, task, done, note }) => ({ piece, of, who, task, done, note, now }));
  write(SENT, [...read(SENT), ...news].slice(-500));
  for (const tick of refused) heard.refused?.(tick, answered.get(tick.key).text);
  for (const tick of counted) heard.counted?.(tick, answered.get(tick.key).text);
  told = [...told, ...sent];
  if (mine().length) { setTimeout(send, 0); return; }
  say("");
  const all = told;
  told = [];
  // the kept page now has what was sent
  fetch(location.pathname).then(() => heard.settled?.(all)).catch(() => { told = [...all, ...told]; });
}
