// Copies the text that a button names; what it says then stands beside the button. Browsers ask nothing when it happens in the press itself; without their clipboard (plain http) the old command does it.
document.addEventListener("click", async pressed => {
  const button = pressed.target.closest?.("[data-copy]");
  const text = button && document.getElementById(button.dataset.copy);
  if (!text) return;
  const said = button.parentElement.querySelector("[data-copied]");
  said.textContent = await copied(text) ? said.dataset.copied : said.dataset.failed;
});

// A page that also works without scripts hides what needs them.
for (const button of document.querySelectorAll("[data-copy][hidden]")) button.hidden = false;

async function copied(text) {
  try {
    await navigator.clipboard.writeText(text.textContent);
    return true;
  } catch {
    getSelection().selectAllChildren(text);
    return document.execCommand("copy");
  }
}
