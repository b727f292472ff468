// What a keystroke takes until every answer that follows is laid out: for the test that guards it (speed.test.mjs) and the
// measuring of `cargo xtask bench` (pace.mjs).
import assert from "node:assert/strict";

/** Where blanks are and what follows them, for `typist`: fasteners, and a season in sight. */
export const OF_TORQUES = ["line-torques-", "#line-torques output"];
export const OF_BATTERY = ["line-battery-", "#line-battery output, .line-of-season path"];

/** Types into blanks whose ids begin with `ids` and measures what each stroke takes; each changes something of what `shown` names. */
export async function typist(page, ids, shown) {
  await page.evaluate(([ids, all]) => {
    const shown = () => [...document.querySelectorAll(all)].map((it) => it.textContent + it.getAttribute("d")).join();
    window.stroke = async (key, text) => {
      const input = document.getElementById(ids + key);
      const before = shown();
      // Where the owner's keys are; the style sheet spares what is out of sight then.
      input.focus({ preventScroll: true });
      document.body.getBoundingClientRect();
      const start = performance.now();
      input.value = text;
      input.dispatchEvent(new InputEvent("input", { bubbles: true }));
      // Answers follow in microtasks, one setting the next going; no frame is painted in between.
      for (let turn = 0; turn < 50; turn += 1) await null;
      document.body.getBoundingClientRect();
      const took = performance.now() - start;
      if (shown() === before) throw new Error("the answers did not follow");
      return took;
    };
  }, [ids, shown]);
  const debug = await page.context().newCDPSession(page);
  await debug.send("Performance.enable", { timeDomain: "threadTicks" });
  const spent = async () => {
    const { metrics } = await debug.send("Performance.getMetrics");
    const parts = ["ScriptDuration", "RecalcStyleDuration", "LayoutDuration"];
    return 1000 * parts.reduce((sum, part) => sum + metrics.find((it) => it.name === part).value, 0);
  };
  const measured = async (expression) => {
    const before = await spent();
    const { result, exceptionDetails } = await debug.send("Runtime.evaluate", { expression, awaitPromise: true, returnByValue: true });
    assert.equal(exceptionDetails?.exception.description, undefined);
    return { wall: result.value, work: (await spent()) - before };
  };
  const strokes = async (key, texts) => {
    const all = [];
    for (const text of texts) all.push(await measured(`stroke("${key}", "${text}")`));
    return all;
  };
  return { debug, measured, strokes };
}
