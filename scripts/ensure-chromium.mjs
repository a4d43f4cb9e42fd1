// Puts Chromium where the browser tests look for it: on Debian as root by apt, elsewhere it says what to do.
// Does nothing where CHROMIUM_PATH names a browser, or one is installed already.
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";

export const usualPlaces = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/opt/google/chrome/chrome",
];

/** The browser to drive, or null where there is none. */
export function findChromium() {
  const named = process.env["CHROMIUM_PATH"];
  if (named !== undefined && named !== "") return existsSync(named) ? named : null;
  return usualPlaces.find((place) => existsSync(place)) ?? null;
}

function install() {
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const apt = (...args) =>
    execFileSync("apt-get", ["-o", "Acquire::Retries=3", ...args], {
      env,
      stdio: ["ignore", "ignore", "inherit"],
    });
  process.stdout.write("Installing Chromium with apt, for the browser tests ...\n");
  apt("update", "-qq");
  apt("install", "-y", "-qq", "--no-install-recommends", "chromium");
}

function fail(said) {
  process.stderr.write(`${said}\n`);
  process.exit(1);
}

if (process.argv[1] === new URL(import.meta.url).pathname && findChromium() === null) {
  if (process.env["CHROMIUM_PATH"]) fail(`CHROMIUM_PATH names no file: ${process.env["CHROMIUM_PATH"]}`);
  const isDebianRoot =
    process.platform === "linux" && process.getuid?.() === 0 && existsSync("/usr/bin/apt-get");
  if (!isDebianRoot)
    fail("The browser tests need Chromium: install it, or name a Chromium or Chrome in CHROMIUM_PATH.");
  try {
    install();
  } catch {
    fail("apt could not install Chromium: install it, or name a Chromium or Chrome in CHROMIUM_PATH.");
  }
  if (findChromium() === null)
    fail("Chromium was installed but is not where it usually lies: name it in CHROMIUM_PATH.");
}
