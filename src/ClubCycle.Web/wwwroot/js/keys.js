// Arrow keys move inside a grid that says so; the page itself must not scroll then.
const arrows = new Set(["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Home", "End"]);
document.addEventListener("keydown", pressed => {
  if (arrows.has(pressed.key) && pressed.target instanceof Element && pressed.target.matches("[data-arrow-keys]")) {
    pressed.preventDefault();
  }
});
