// Tells the year board which place the pointer is over: once a place, and once a frame at most. A mouse opens what it presses; a finger looks first.
Blazor.registerCustomEventType("boardpoint", { createEventArgs: point => point.detail });

let last = "";
let waiting = null;

document.addEventListener("pointermove", moved => {
  if (moved.pointerType !== "touch") point(moved, false);
}, { passive: true });

document.addEventListener("click", pressed => {
  if (pressed.target.closest?.("[data-board]") && !pressed.target.closest("a")) point(pressed, pressed.pointerType === "mouse");
});

function point(event, open) {
  const place = placeOf(event.target, event.clientX);
  const now = place ? `${place.row} ${place.column}` : "";
  if (!place || (now === last && !open && event.type !== "click")) return;
  last = now;
  const tell = () => place.board.dispatchEvent(new CustomEvent("boardpoint", { bubbles: true, detail: { row: place.row, column: place.column, open } }));
  cancelAnimationFrame(waiting);
  if (event.type === "click") tell();
  else waiting = requestAnimationFrame(tell);
}

// The details of a place belong to it: over them nothing changes.
function placeOf(target, x) {
  const row = target.closest?.(".board-row");
  const board = row?.closest("[data-board]");
  if (!board || target.closest(".board-card")) return null;
  const weeks = row.querySelector(".board-weeks").getBoundingClientRect();
  const count = +board.style.getPropertyValue("--weeks");
  const column = target.closest(".board-weeks") ? Math.min(count - 1, Math.max(0, Math.floor((x - weeks.left) / weeks.width * count))) : target.closest(".board-name") ? -2 : -1;
  return { board, row: [...board.querySelectorAll(".board-row")].indexOf(row), column };
}
