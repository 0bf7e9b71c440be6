// Keeps opened cards for when there is no network, and lets go of them when somebody signs out.
"use strict";
if ("serviceWorker" in navigator) {
  navigator.serviceWorker.register("/worker.js").catch(() => {});
}
document.addEventListener("submit", (event) => {
  if (event.target.matches("[data-sign-out]") && "caches" in window) {
    caches.delete("gageline-pages");
  }
});
