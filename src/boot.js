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

// The bench view: the screen stays on while it is in sight, and keys turn its steps like pages. A quarter of what it is in Rust.
let lock;
function turn() {
  const here = location.hash.startsWith("#bench");
  document.body.classList.toggle("at-bench", here);
  lock?.then((given) => given?.release());
  // Out of sight every lock ends. What a browser refuses, on a low battery, or does not know is left at that.
  const wanted = here && document.visibilityState === "visible";
  lock = wanted ? navigator.wakeLock?.request("screen").catch(() => {}) : undefined;
}
addEventListener("hashchange", turn);
addEventListener("visibilitychange", turn);
turn();
addEventListener("keydown", (event) => {
  const { key, target, shiftKey, altKey, ctrlKey, metaKey } = event;
  const place = { ArrowLeft: 0, PageUp: 0, ArrowRight: 1, PageDown: 1, " ": shiftKey ? 0 : 1 }[key];
  const button = document.querySelectorAll(".go")[place];
  // The space bar belongs to what it presses, all else to the browser.
  if (!button || altKey || ctrlKey || metaKey || (key === " " && target.tabIndex >= 0)) return;
  event.preventDefault();
  button.click();
});

try {
  const { js, wasm } = document.querySelector("script[data-wasm]").dataset;
  const at = (url) => new URL(url, document.baseURI).href;
  const { default: start } = await import(at(js));
  await start({ module_or_path: at(wasm) });
} catch (failure) {
  console.error(failure);
  rescue();
}
