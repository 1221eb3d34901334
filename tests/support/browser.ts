import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const names = [
  'google-chrome',
  'google-chrome-stable',
  'chromium',
  'chromium-browser',
  'microsoft-edge',
];
const places = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

// Keeps the browser off the network: without these it looks up its maker's hosts at every start.
const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

function installed(): string | null {
  for (const name of names) {
    try {
      return execFileSync(process.platform === 'win32' ? 'where' : 'which', [name], {
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'ignore'],
      })
        .split('\n')[0]!
        .trim();
    } catch {
      // not this one
    }
  }
  return places.find((place) => existsSync(place)) ?? null;
}

async function packaged(): Promise<string | null> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  const { default: bundled } = await import('@sparticuz/chromium');
  return bundled.executablePath();
}

/** Starts a browser: the one SPANWRIGHT_BROWSER names, an installed one, or the one in the npm package. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = process.env.SPANWRIGHT_BROWSER ?? installed() ?? (await packaged());
  if (!executablePath)
    throw new Error(
      'No browser found. Install Chrome, Chromium or Edge, or set SPANWRIGHT_BROWSER to the full path of one.',
    );
  try {
    return await chromium.launch({ executablePath, args: quiet });
  } catch (error) {
    throw new Error(
      `The browser ${executablePath} did not start. Install Chromium (on Debian: apt-get install chromium) or set SPANWRIGHT_BROWSER to the full path of another. ${error instanceof Error ? error.message : error}`,
    );
  }
}
