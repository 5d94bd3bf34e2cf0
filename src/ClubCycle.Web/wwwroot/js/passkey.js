// Has the browser make or show a passkey, and sends the form with its answer.
const known = window.PublicKeyCredential?.parseCreationOptionsFromJSON;

for (const form of document.querySelectorAll("form[data-passkey]")) {
    const note = form.querySelector("[role=alert]");
    const say = text => {
        note.textContent = text;
        note.hidden = false;
    };

    form.hidden = !known;
    form.addEventListener("submit", async event => {
        event.preventDefault();
        note.hidden = true;
        try {
            const answer = await fetch(form.dataset.challenge, { method: "POST", body: new URLSearchParams(new FormData(form)) });
            const asked = await answer.json();
            if (asked.problem) {
                say(asked.problem);
                return;
            }

            const key = form.dataset.passkey === "create"
                ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(asked) })
                : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(asked) });
            form.elements.credential.value = JSON.stringify(key);
            form.submit();
        } catch {
            // Put aside by the person, refused by the device, or nobody answered: each asks for another try.
            say(form.dataset.failed);
        }
    });
}
