// A pad of feet, inches and sixteenths for fields of lengths, to be worked with gloves.
"use strict";
(() => {
  const metric = document.querySelector("[data-metric]") !== null;
  const dialog = document.createElement("dialog");
  dialog.className = "pad";
  dialog.setAttribute("aria-label", "Length pad");
  document.body.append(dialog);
  let field = null;
  let value = nothing();

  function nothing() { return { feet: "", inches: 0, sixteenths: 0, mm: "", minus: false }; }
  const make = (tag, words, more) => Object.assign(document.createElement(tag), { textContent: words }, more);

  function fraction(count) {
    let [over, under] = [count, 16];
    while (over && over % 2 === 0) { over /= 2; under /= 2; }
    return over ? `${over}/${under}` : "0";
  }

  function text() {
    const size = bare();
    return value.minus && size !== "0" ? `-${size}` : size;
  }

  function bare() {
    if (metric) return value.mm || "0";
    const part = value.sixteenths ? ` ${fraction(value.sixteenths)}` : "";
    if (value.feet && value.feet !== "0") return `${value.feet}'-${value.inches}${part}"`;
    return `${value.inches || !part ? value.inches : ""}${part}`.trim();
  }

  function row(name, count, words, pick, chosen) {
    const group = make("div", "", { className: "pad-row" });
    group.setAttribute("role", "group");
    group.setAttribute("aria-label", name);
    group.append(make("span", name, { className: "pad-name" }));
    for (let number = 0; number < count; number += 1) {
      const button = make("button", words(number), { type: "button" });
      button.setAttribute("aria-pressed", String(chosen === number));
      button.addEventListener("click", () => { pick(number); draw(); });
      group.append(button);
    }
    return group;
  }

  function draw() {
    const digits = metric ? "mm" : "feet";
    const shown = make("output", text(), { className: "pad-shown num" });
    const rows = [row(metric ? "millimetres" : "feet", 10, String, (n) => {
      value[digits] = `${value[digits]}${n}`.replace(/^0+(?=\d)/, "").slice(0, 6);
    })];
    if (!metric) {
      rows.push(row("inches", 12, String, (n) => { value.inches = n; }, value.inches));
      rows.push(row("sixteenths", 16, fraction, (n) => { value.sixteenths = n; }, value.sixteenths));
    }
    const end = make("div", "", { className: "pad-end" });
    const clear = make("button", "Clear", { type: "button" });
    clear.addEventListener("click", () => { value = nothing(); draw(); });
    const sign = make("button", "Minus", { type: "button" });
    sign.setAttribute("aria-pressed", String(value.minus));
    sign.addEventListener("click", () => { value.minus = !value.minus; draw(); });
    const leave = make("button", "Leave", { type: "button" });
    leave.addEventListener("click", () => dialog.close());
    const take = make("button", "Take it", { type: "button", className: "strong" });
    take.addEventListener("click", () => {
      const more = field.dataset.length === "lengths" && field.value.trim();
      field.value = more ? `${field.value.trim()}; ${text()}` : text();
      dialog.close();
      field.dispatchEvent(new Event("change", { bubbles: true }));
    });
    end.append(clear, sign, leave, take);
    dialog.replaceChildren(shown, ...rows, end);
  }

  function offer(root) {
    for (const input of root.querySelectorAll("input[data-length]")) {
      if (input.parentElement.querySelector(".pad-open")) continue;
      const open = make("button", "Pad", { type: "button", className: "pad-open quiet" });
      open.setAttribute("aria-label", `Pad for ${document.querySelector(`label[for="${input.id}"]`).textContent.trim()}`);
      open.addEventListener("click", () => {
        field = input;
        value = nothing();
        draw();
        dialog.showModal();
      });
      input.after(open);
    }
  }

  offer(document);
  document.body.addEventListener("htmx:afterSwap", () => offer(document));
  dialog.addEventListener("close", () => field && field.focus());
})();
