// Starts the page without an inline script, stands in for it when it cannot go on, and keeps it for days without a network.
// An index.html out of a cache may be older than this: what it has under an id stays, and what is new may not be there.
const at = (id) => document.getElementById(id);
const url = (name) => new URL(name, document.baseURI).href;
const { js, wasm, integrity } = document.querySelector("script[data-wasm]").dataset;
let registration;

function rescue() {
  const panel = at("rescue");
  if (!panel.hidden) return;
  at("shell")?.remove();
  document.body.prepend(panel);
  panel.hidden = false;
  at("rescue-title").focus();
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
  const text = at("rescue-text");
  const said = at("rescue-said");
  try {
    text.value = stored();
  } catch (refusal) {
    said.textContent = `This browser does not let the page read its store (${refusal.name}).`;
    return;
  }
  at("rescue-stored").hidden = false;
  text.select();
  try {
    await navigator.clipboard.writeText(text.value);
    said.textContent = "Copied. Keep it in a text file.";
  } catch {
    said.textContent = "Copy the text above and keep it in a text file.";
  }
}

// With the newest build that there is. What is typed is kept when the page goes.
async function reload() {
  const again = () => location.reload();
  // A host that does not answer must not make the button dead.
  setTimeout(again, 5000);
  await registration?.update().catch(() => {});
  const next = registration?.installing ?? registration?.waiting;
  if (next) {
    next.addEventListener("statechange", () => {
      if (["activated", "redundant"].includes(next.state)) again();
    });
    next.postMessage("take over");
    return;
  }
  // Past copies in caches that are old, or broken; what a worker keeps is neither.
  if (!navigator.serviceWorker?.controller) {
    await Promise.allSettled([location.href, url(js)].map((it) => fetch(it, { cache: "reload" })));
  }
  again();
}

// Files of one build come from the worker's one cache of it (src/worker.js). Where the browser lets no worker in, the page
// works as before, with a network only.
async function keep() {
  // Where it is heard when something is said in it.
  document.querySelector("main")?.before(at("news"));
  try {
    const workers = navigator.serviceWorker;
    registration = await workers.register("sw.js");
    const offer = () => {
      if (!registration.waiting || !workers.controller) return;
      at("newer").hidden = false;
    };
    registration.addEventListener("updatefound", () => {
      registration.installing.addEventListener("statechange", offer);
    });
    offer();
    // A page that was installed may stay open for weeks.
    document.addEventListener("visibilitychange", () => {
      if (!document.hidden) registration.update().catch(() => {});
    });
    if (workers.controller) return;
    await workers.ready;
    document.querySelector("footer")?.append(at("offline"));
    at("offline").hidden = false;
  } catch {
    // Nothing is lost by it.
  }
}

// Where the owner was, and is: a phone forgets tabs that are out of sight, and a browser looks for its place before the sheet
// stands.
function keepPlace() {
  scrollTo(0, history.state ?? scrollY);
  const keep = () => history.replaceState(Math.round(scrollY), "");
  addEventListener("scrollend", keep);
  // Back on a part of the page, where it was left: the browser looks for that place before the part stands.
  let place;
  addEventListener("popstate", ({ state }) => (place = state));
  addEventListener("hashchange", () => setTimeout(() => scrollTo(0, place ?? scrollY)));
  addEventListener("visibilitychange", keep);
}
document.addEventListener("torpor-whole", keepPlace, { once: true });

// What is typed in stays where it is, whatever comes or goes above it: with the first letter the example makes way.
addEventListener("input", ({ target }) => {
  const top = () => target.getBoundingClientRect().top;
  const before = top();
  setTimeout(() => target.isConnected && scrollBy(0, top() - before));
}, true);

async function start() {
  // The names of files are made of what is in them; that it is so is checked here. A copy that is not is asked for anew.
  const bytes = (cache) => fetch(url(wasm), { integrity, cache });
  const answered = bytes("default").catch(() => bytes("reload"));
  try {
    const [{ default: begin, unpack }, answer] = await Promise.all([import(url(js)), answered]);
    if (!answer.ok) throw new Error(`${answer.status} ${wasm}`);
    const packed = wasm.endsWith(".packed.wasm");
    await begin({ module_or_path: packed ? unpack(new Uint8Array(await answer.arrayBuffer())) : answer });
  } catch (failure) {
    console.error(failure);
    rescue();
  }
  // Only what `cargo xtask build` has sealed has a worker.
  if (integrity) keep();
}

// How long what is kept will stay here, as far as it can be known. Safari goes by its own days, whatever it promises.
async function lasting(ask) {
  const line = at("lasting");
  const { storage, vendor } = navigator;
  const promised = await storage?.[ask]?.().catch(() => false);
  const app = matchMedia("(display-mode: standalone)").matches;
  if (!line) return;
  line.textContent = vendor.startsWith("Apple")
    ? app
      ? "On the Home Screen it has a store of its own, meant to stay until you remove the app or clear it."
      : "Safari removes it after seven days of use without a visit here. On the Home Screen it stays, but begins empty there: take the link along."
    : promised
      ? "This browser has agreed to keep it until you clear it."
      : "This browser has not agreed to keep it for good: it may go when the disk runs full, and goes with a private window or with site data.";
  at("kept-here")?.after(line);
  line.hidden = false;
}
document.addEventListener("torpor-open", () => lasting("persisted"));
// A browser may ask its owner: with the first save, never on load.
document.addEventListener("torpor-kept", () => lasting("persist"), { once: true });

const press = (id, act) => at(id)?.addEventListener("click", act);
press("rescue-reload", reload);
press("newer-reload", reload);
press("rescue-copy", copy);

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

// In a frame, what surrounds the page could make a person press what they do not see.
if (self === top) {
  start();
} else {
  at("laying-out").hidden = true;
  at("framed").hidden = false;
}
