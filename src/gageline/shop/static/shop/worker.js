// Pages that were opened and the files they need, kept for when there is no network.
"use strict";
const PAGES = "gageline-pages";
const FILES = "gageline-files";
const KEPT = /^\/(saw|bench|fit|check|piece|gate)\/(\d+\/)?$/;
const LONGEST_WAIT = 4000; // milliseconds for a page; then the kept one is shown

self.addEventListener("install", (event) => event.waitUntil(self.skipWaiting()));
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

async function fresh(request, store) {
  const response = await fetch(request);
  if (response.ok && !response.redirected) {
    const cache = await caches.open(store);
    await cache.put(request, response.clone());
  }
  return response;
}

async function page(request) {
  const kept = await caches.match(request, { ignoreVary: true });
  const late = new Promise((_, refuse) => setTimeout(refuse, LONGEST_WAIT, new Error("late")));
  const now = fresh(request, PAGES);
  try {
    return await (kept ? Promise.race([now, late]) : now);
  } catch (wrong) {
    now.catch(() => {});
    if (kept) return kept;
    const words = "<!doctype html><html lang=en><meta charset=utf-8><title>No network</title>" +
      "<h1>No network</h1><p>This page was not opened before. Cards that were opened still work.</p>";
    return new Response(words, { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } });
  }
}

async function file(request) {
  const kept = await caches.match(request);
  const now = fresh(request, FILES);
  if (!kept) return now;
  now.catch(() => {});
  return kept;
}

self.addEventListener("fetch", (event) => {
  const request = event.request;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  if (url.pathname.startsWith("/static/")) event.respondWith(file(request));
  else if (KEPT.test(url.pathname) && !request.headers.get("HX-Request")) event.respondWith(page(request));
});
