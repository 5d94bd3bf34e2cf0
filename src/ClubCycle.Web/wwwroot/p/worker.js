// Between a player's page and the club: what was seen last is kept on this phone, for when there is no connection.
// The page's secret address is kept here and nowhere else: not in the manifest, which browsers hand to the makers of phones.
const box = "player";
const ownPage = /^\/p\/[\w-]{43}$/;
const drawnWith = /^\/(css|fonts|js)\//;
const start = "/p/";
const patience = path => drawnWith.test(path) ? 1000 : 4000;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", event => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", event => {
  const { origin, pathname } = new URL(event.request.url);
  if (event.request.method !== "GET" || origin !== self.location.origin) return;
  if (pathname === start) event.respondWith(open(event));
  else if (isKept(pathname)) event.respondWith(answer(event, pathname));
});

// A first page was there before its worker: it says what it and its parts are, and the browser still has them.
self.addEventListener("message", event => event.waitUntil(keepAll(event.data)));

async function keepAll(addresses) {
  for (const address of addresses) {
    const { origin, pathname } = new URL(address, self.location);
    if (origin === self.location.origin && isKept(pathname)) await remember(pathname, await fetch(pathname, { cache: "force-cache" }));
  }
}

// The club's word first; without one in time, what was kept.
async function answer(event, path) {
  const fresh = fetch(event.request).then(response => remember(path, response));
  event.waitUntil(fresh.catch(() => { }));
  const late = new Promise(resolve => setTimeout(resolve, patience(path)));
  try {
    const first = await Promise.race([fresh, late]);
    return first?.status < 500 ? first : await kept(path, "waiting") ?? await fresh;
  } catch {
    return await kept(path, "offline") ?? Response.error();
  }
}

// The phone's icon opens the only page that is kept; with several, the start page asks whose.
async function open(event) {
  const pages = await ownPages();
  if (pages.length === 1) return Response.redirect(pages[0]);
  return answer(event, start);
}

async function remember(path, response) {
  const keeps = await caches.open(box);
  if (response.ok && (ownPage.test(path) || (await ownPages()).length > 0)) {
    // A phone without room shows the page all the same.
    await keeps.put(path, response.clone()).catch(full => console.warn("Nothing was kept:", full.message));
  } else if (response.status === 404 || response.status === 410) {
    await keeps.delete(path);
    if ((await ownPages()).length === 0) await caches.delete(box);
  }

  return response;
}

async function kept(path, why) {
  const page = await (await caches.open(box)).match(path, { ignoreVary: true });
  if (!page || drawnWith.test(path)) return page;
  const today = new Date().toLocaleDateString("sv");
  const html = (await page.text())
    .replace(` hidden data-kept="${why}"`, "")
    .replaceAll(/(?: hidden)? data-today="([\d-]+)"/g, (_, day) => day === today ? "" : " hidden");
  return new Response(html, { headers: [...page.headers].filter(([name]) => name !== "content-encoding" && name !== "content-length") });
}

function isKept(path) {
  return path === start || ownPage.test(path) || drawnWith.test(path);
}

async function ownPages() {
  return (await (await caches.open(box)).keys()).map(request => new URL(request.url).pathname).filter(path => ownPage.test(path));
}
