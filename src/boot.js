// Starts the page without an inline script, and stands in for it when it cannot go on.
const part = (id) => document.getElementById(`rescue-${id}`);

function rescue() {
  const panel = document.getElementById("rescue");
  if (!panel.hidden) return;
  document.getElementById("shell")?.remove();
  document.body.prepend(panel);
  panel.hidden = false;
  part("title").focus();
}

// Other pages of the same host share the store: only this page's own entries are taken.
function stored() {
  const kept = {};
  for (let i = 0; i < localStorage.length; i += 1) {
    const key = localStorage.key(i);
    if (key.startsWith("torpor.")) kept[key] = localStorage.getItem(key);
  }
  return JSON.stringify(kept, null, 1);
}

async function copy() {
  const text = part("text");
  try {
    text.value = stored();
  } catch (refusal) {
    part("said").textContent = `This browser does not let the page read its store (${refusal.name}).`;
    return;
  }
  part("stored").hidden = false;
  text.select();
  try {
    await navigator.clipboard.writeText(text.value);
    part("said").textContent = "Copied. Keep it in a text file.";
  } catch {
    part("said").textContent = "Copy the text above and keep it in a text file.";
  }
}

part("reload").addEventListener("click", () => location.reload());
part("copy").addEventListener("click", copy);

// A panic ends in a trap, and so does an exhausted stack: the page is dead.
const trapped = (failure) => {
  if (failure instanceof WebAssembly.RuntimeError) rescue();
};
addEventListener("error", ({ error }) => trapped(error));
// In what follows a promise, such as a file that was read.
addEventListener("unhandledrejection", ({ reason }) => trapped(reason));

try {
  const { js, wasm } = document.querySelector("script[data-wasm]").dataset;
  const at = (url) => new URL(url, document.baseURI).href;
  const { default: start } = await import(at(js));
  await start({ module_or_path: at(wasm) });
} catch (failure) {
  console.error(failure);
  rescue();
}
