// Switches between light and dark and remembers it in a cookie, so that the server can write it into the next page before it is painted.
const root = document.documentElement;
const dark = () => root.dataset.theme ? root.dataset.theme === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;

document.addEventListener("click", event => {
  const button = event.target.closest?.("[data-theme-switch]");
  if (!button) return;
  root.dataset.theme = dark() ? "light" : "dark";
  const secure = location.protocol === "https:" ? "; secure" : "";
  document.cookie = `clubcycle-theme=${root.dataset.theme}; path=/; max-age=31536000; samesite=lax${secure}`;
});
