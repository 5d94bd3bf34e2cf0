// The start page of the home screen's icon: several players' pages may be kept on a family's phone. Those that the club took back are forgotten as they are asked for.
const own = [];
for (const { url } of await (await caches.open("player")).keys()) {
  if (!/\/p\/[\w-]{43}$/.test(url)) continue;
  const answer = await fetch(url);
  if (answer.ok) own.push({ url, page: new DOMParser().parseFromString(await answer.text(), "text/html") });
}

const none = document.querySelector("[data-none]");
if (own.length === 1) location.replace(own[0].url);
else if (own.length > 1) {
  const list = document.querySelector("[data-pages]");
  for (const { url, page } of own) {
    const link = Object.assign(document.createElement("a"), { href: url, className: "button", textContent: `${page.querySelector("h1").textContent} (${page.querySelector(".brand").textContent})` });
    list.append(link);
  }
  list.hidden = false;
  none.hidden = true;
}

// Some phones keep nothing of the browser for what is on the home screen, and give it no bar for addresses.
const form = document.querySelector("[data-link]");
form.hidden = false;
form.addEventListener("submit", sent => {
  sent.preventDefault();
  const token = /\/(?:p|calendar)\/([\w-]{43})(?:\.ics)?$/.exec(form.querySelector("input").value.trim());
  if (token) location.assign(`/p/${token[1]}`);
});
