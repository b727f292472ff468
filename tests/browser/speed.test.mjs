// A guard, not a benchmark: from a keystroke to every answer laid out, on a processor slowed down four times, with the
// torque line open and twelve fasteners kept. The bound is wide, so that a busy machine does not fail it; the figures
// that the design asks for (median 8 ms, 95 of 100 within 16 ms) are printed beside what was measured.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, openPage, stop } from "./harness.mjs";
import { answers, line, type } from "./sheet.mjs";

after(stop);

const FASTENERS = 12;
const KEYSTROKES = 30;

test("a keystroke is answered soon, with twelve fasteners kept", async (t) => {
  const page = await openPage({ hash: "#layup/torques", locale: "en-GB" });
  await page.getByRole("button", { name: "start your own" }).click();
  const torques = line(page, "Torques");
  await type(torques, { Adapter: ["in line"], "Wrench length, hand to square drive": "285", Graduation: "1", "Lowest mark": "5", "Highest mark": "60" });
  for (let at = 1; at <= FASTENERS; at += 1) {
    await type(torques, {
      "Torque at the fastener": `${10 + at} (${8 + at}–${12 + at})`, Adapter: ["in line"],
      "Adapter length, drive to fastener": "40", Fastener: `Nut ${at}`,
    });
    await torques.getByRole("button", { name: "Keep this fastener" }).click();
  }
  assert.equal(await torques.getByRole("button", { name: /^Remove/ }).count(), FASTENERS);
  await answers(line(page, `Nut ${FASTENERS}`), { "Set the wrench to": /^\d+ N·m$/ });
  await type(torques, { "Torque at the fastener": "25 (22–26)", Adapter: ["in line"], "Adapter length, drive to fastener": "40" });

  const debug = await page.context().newCDPSession(page);
  await debug.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  // The wrench's length is asked by every row: the most that one keystroke can set going.
  const times = await page.evaluate(async (count) => {
    const input = document.getElementById("line-torques-wrench_length");
    const rows = () => [...document.querySelectorAll(".fastener output")].map((it) => it.textContent).join();
    const times = [];
    for (let at = 0; at < count; at += 1) {
      const before = rows();
      // As if "2", "28", "285", … were typed, each another length.
      const text = String(200 + at * 3);
      const start = performance.now();
      input.value = text;
      input.dispatchEvent(new InputEvent("input", { bubbles: true }));
      // Answers follow in microtasks; a message is the next task, without a timer's wait.
      await new Promise((next) => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = next;
        port2.postMessage(0);
      });
      document.body.getBoundingClientRect();
      times.push(performance.now() - start);
      if (rows() === before) throw new Error("the answers did not follow");
      await new Promise((next) => setTimeout(next, 20));
    }
    return times;
  }, KEYSTROKES);
  await debug.send("Emulation.setCPUThrottlingRate", { rate: 1 });

  const sorted = times.toSorted((one, other) => one - other);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))];
  t.diagnostic(`median ${at(0.5).toFixed(1)} ms (asked: 8), 95 % within ${at(0.95).toFixed(1)} ms (asked: 16)`);
  assert.ok(at(0.95) <= 50, sorted.map((it) => it.toFixed(1)).join(" "));
  await clean(page);
});
