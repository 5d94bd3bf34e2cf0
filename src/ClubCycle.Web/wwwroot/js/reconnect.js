// Shows what became of the connection and takes it up again; texts are in ReconnectModal.razor, visibility in screens.css.
const modal = document.getElementById("components-reconnect-modal");

modal.addEventListener("components-reconnect-state-changed", ({ detail }) => {
  if (detail.state === "show" && !modal.open) modal.showModal();
  if (detail.state === "hide") modal.close();
  if (detail.state === "failed") document.addEventListener("visibilitychange", retryWhenSeen);
  if (detail.state === "rejected") location.reload();
});

document.getElementById("components-reconnect-button").addEventListener("click", retry);
document.getElementById("components-resume-button").addEventListener("click", resume);

async function retry() {
  document.removeEventListener("visibilitychange", retryWhenSeen);
  try {
    // False means that the server answered but no longer knows this page.
    if (await Blazor.reconnect() || await Blazor.resumeCircuit()) modal.close();
    else location.reload();
  } catch {
    document.addEventListener("visibilitychange", retryWhenSeen);
  }
}

async function resume() {
  try {
    if (await Blazor.resumeCircuit()) modal.close();
    else location.reload();
  } catch {
    modal.classList.replace("components-reconnect-paused", "components-reconnect-resume-failed");
  }
}

function retryWhenSeen() {
  if (document.visibilityState === "visible") retry();
}
