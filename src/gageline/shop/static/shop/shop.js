// Keeps opened cards for when there is no network, lets go of them when somebody signs out, and lets a form
// that was open while its session ended go on with the next one.
"use strict";
if ("serviceWorker" in navigator) {
  navigator.serviceWorker.register("/worker.js").catch(() => {});
}
const CSRF = "csrfmiddlewaretoken";
const csrf = () => (document.cookie.match(/(?:^|; )csrftoken=([^;]+)/) || [])[1];
document.addEventListener("submit", (event) => {
  const field = event.target.elements[CSRF];
  if (field && csrf()) field.value = csrf();
  if (event.target.matches("[data-sign-out]") && "caches" in window) {
    caches.delete("gageline-pages");
  }
}, true);
document.addEventListener("htmx:configRequest", ({ detail }) => {
  if (detail.verb === "post" && csrf()) detail.parameters[CSRF] = csrf();
});
document.addEventListener("htmx:afterSettle", () => {
  // a field is shown as wrong for as long as something wrong is said of it
  for (const one of document.querySelectorAll(".field [aria-describedby]")) {
    const wrong = document.getElementById(one.id.replace(/^f-/, "say-"))?.classList.contains("error");
    if (wrong) one.setAttribute("aria-invalid", "true");
    else one.removeAttribute("aria-invalid");
  }
});
document.addEventListener("htmx:afterSwap", ({ detail }) => {
  if (detail.target.id !== "net") document.querySelectorAll("#net .signed-out").forEach((one) => one.remove());
});
