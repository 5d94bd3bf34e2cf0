// Keeps a player's page for when there is no connection (p/worker.js) and lets it be put on the home screen.
import "./copy.js";

const longAway = 10 * 60 * 1000;
const here = location.pathname;
const install = document.getElementById("install");

if (navigator.serviceWorker && /^\/p\/[\w-]{43}$/.test(here)) {
  install.hidden = false;
  // Parts that still load are in no list yet.
  const loaded = new Promise(resolve => document.readyState === "complete" ? resolve() : addEventListener("load", resolve));
  navigator.serviceWorker.addEventListener("controllerchange", async () => {
    await loaded;
    navigator.serviceWorker.controller.postMessage([here, "/p/", "/js/start.js", ...performance.getEntriesByType("resource").map(part => part.name)]);
  }, { once: true });
  await navigator.serviceWorker.register("/p/worker.js");
}

// Some browsers can be asked; in the others the words say how.
addEventListener("beforeinstallprompt", offer => {
  offer.preventDefault();
  const button = install.querySelector("button");
  button.hidden = false;
  button.addEventListener("click", () => offer.prompt());
});

// An app on a home screen is left open for days: whoever comes back sees today, or that the link is gone.
let left = 0;
document.addEventListener("visibilitychange", () => {
  if (document.hidden) left = Date.now();
  else if (Date.now() - left > longAway) location.reload();
});
