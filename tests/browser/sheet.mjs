// The sheet as a person works on it: lines by their names, blanks and answers by their labels.
import assert from "node:assert/strict";
import { setTimeout as wait } from "node:timers/promises";

/** A line or a quick sum, by its title. */
export function line(page, title) {
  return page.getByRole("region", { name: title, exact: true });
}

/** Unfolds a line unless it is open. */
export async function unfold(page, title) {
  const fold = line(page, title).getByRole("button", { name: title, exact: true });
  if ((await fold.getAttribute("aria-expanded")) !== "true") await fold.click();
  return line(page, title);
}

/** A blank of a line. */
export function blank(within, label) {
  const like = { name: label, exact: true };
  return within.getByRole("textbox", like).or(within.getByRole("combobox", like));
}

/** One answer of a choice. */
export function choice(within, label, name) {
  return within.getByRole("group", { name: label, exact: true }).getByRole("radio", { name, exact: true });
}

/** Types texts into blanks; a text in a list, `["in line"]`, chooses. */
export async function type(within, texts) {
  for (const [label, text] of Object.entries(texts)) {
    if (Array.isArray(text)) await choice(within, label, text[0]).check();
    else await blank(within, label).fill(text);
  }
}

/** The button that shows what a bare number means and changes it. */
export function unitOf(within, label) {
  return blank(within, label).locator("xpath=..").getByRole("button", { name: /change unit$/ });
}

/** Everything that describes a blank: its hint, how it was read, why it is not taken. */
export async function beside(within, label) {
  return blank(within, label).evaluate((input) => {
    const ids = input.getAttribute("aria-describedby").split(" ");
    return ids.map((id) => document.getElementById(id).textContent).join(" ").replaceAll("\u00a0", " ").trim();
  });
}

/** An answer. */
export function answer(within, label) {
  return within.locator("output").and(within.getByLabel(label, { exact: true }));
}

/** An answer as it is read by a person. */
export async function shown(within, label) {
  return (await answer(within, label).textContent()).replaceAll("\u00a0", " ");
}

/** The unrounded number of an answer. */
export async function number(within, label) {
  return Number(await answer(within, label).locator("data").getAttribute("value"));
}

/**
 * Holds answers against what is expected: a text as it is shown, or `[number, text]`, the number unrounded and held to
 * 1e-6. Answers follow their entries a moment later, so a miss is looked at again for a while.
 */
export async function answers(within, expected) {
  for (const [label, want] of Object.entries(expected)) {
    const [value, text] = Array.isArray(want) ? want : [undefined, want];
    await eventually(async () => {
      if (text instanceof RegExp) assert.match(await shown(within, label), text, label);
      else assert.equal(await shown(within, label), text, label);
      if (value !== undefined) near(await number(within, label), value, 1e-6, label);
    });
  }
}

/** A number within a distance of another. */
export function near(got, want, within, what) {
  assert.ok(Math.abs(got - want) <= within, `${what}: ${got}, expected ${want}`);
}

/** Tries again until it holds, or for two seconds. */
export async function eventually(holds, patience = 2000) {
  const end = Date.now() + patience;
  for (;;) {
    try {
      return await holds();
    } catch (failure) {
      if (Date.now() > end) throw failure;
      await wait(25);
    }
  }
}

/** Every answer of the page under its label, with its unrounded number or day, in their order. */
export async function allAnswers(page) {
  return page.locator("output").evaluateAll((all) =>
    all.map((output) => {
      const label = document.getElementById(output.getAttribute("aria-labelledby")).textContent;
      const exact = output.querySelector("data")?.value ?? output.querySelector("time")?.dateTime ?? "";
      return `${label}: ${output.textContent} [${exact}]`;
    }),
  );
}

/** The text of every blank and every choice under its id, for comparing before and after. */
export async function allEntries(page) {
  return page.locator("main").evaluate((main) => {
    const fields = [...main.querySelectorAll("input:not(.picker), select")];
    const units = [...main.querySelectorAll("button.unit")];
    return [
      ...fields.map((it) => `${it.id}: ${["radio", "checkbox"].includes(it.type) ? it.checked : it.value}`),
      ...units.map((it) => `unit of ${it.previousElementSibling?.id}: ${it.textContent}`),
    ];
  });
}

/** What this page keeps in the browser: ours only, by key. */
export async function stored(page) {
  return page.evaluate(() =>
    Object.fromEntries(Object.keys(localStorage).filter((key) => key.startsWith("torpor.")).sort().map((key) => [key, localStorage.getItem(key)])),
  );
}

/** Waits until a bike is kept in the browser and nothing waits to be written. */
export async function kept(page) {
  await eventually(async () => {
    const keys = Object.keys(await stored(page));
    assert.ok(keys.some((key) => key.startsWith("torpor.bike.")), keys.join(" "));
  });
  // Writes once more whatever was typed last, as when the page goes out of sight.
  await page.evaluate(() => dispatchEvent(new Event("pagehide")));
}

/** Presses the button of this name. */
export const press = (page, name) => page.getByRole("button", { name, exact: true }).click();

/** The box of a step. */
export const tick = (page, title) => page.getByRole("checkbox", { name: `Done: ${title}`, exact: true });

/** From now on the browser's store is full: it takes nothing, or of `which` other than "all" no text but an empty one. */
export const fillStore = (page, which = "all") => page.evaluate((which) => {
  const real = Storage.prototype.setItem;
  window.full = true;
  Storage.prototype.setItem = function full(key, text) {
    if (window.full && (which === "all" || text !== "")) throw new DOMException("full", "QuotaExceededError");
    real.call(this, key, text);
  };
}, which);

/** There is room again. */
export const roomInStore = (page) => page.evaluate(() => { window.full = false; });
