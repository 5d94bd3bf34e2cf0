// Ctrl+Z and Ctrl+Y press the undo and redo buttons of the page. Arrow keys and their like move inside a grid that says so; the page itself must not scroll then.
const arrows = new Set(["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Home", "End", "PageUp", "PageDown"]);
const typing = "input, textarea, select, [contenteditable]";
document.addEventListener("keydown", pressed => {
  if ((pressed.ctrlKey || pressed.metaKey) && !pressed.altKey && !pressed.target.matches?.(typing)) {
    const key = pressed.key.toLowerCase();
    const step = key === "z" && !pressed.shiftKey ? "undo" : key === "y" || (key === "z" && pressed.shiftKey) ? "redo" : null;
    const button = step && document.querySelector(`[data-${step}]:not(:disabled)`);
    if (button) {
      pressed.preventDefault();
      button.click();
      return;
    }
  }

  if (arrows.has(pressed.key) && pressed.target instanceof Element && pressed.target.matches("[data-arrow-keys]")) {
    pressed.preventDefault();
  }
});
