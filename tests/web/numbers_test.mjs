// numbers_test.mjs NATIVE WEB.js: every number of every demo recipe from the desktop's program and from
// WebAssembly. Both compute + - * / and sqrt alike; sin, acos and cbrt come from two libraries, which
// differ by a last place or a few (measured for toolchain-web: up to 3 units in half of the cube roots).
// So equal means: the same counts, and lengths and masses within 1e-12 of each other, some thousand
// last places, which no rule or rounding of the program can see; and within 1e-11 what is solved for in the
// water, where angles near balance are small differences of such sums (measured: 1.4e-12).

import { execFileSync } from 'node:child_process';
import path from 'node:path';

const [native, web] = process.argv.slice(2);
const recipes = path.resolve(import.meta.dirname ?? path.dirname(new URL(import.meta.url).pathname), '../../assets/recipes');
const lines = (program, ...args) => execFileSync(program, [...args, recipes], { encoding: 'utf8', maxBuffer: 1 << 28 }).trim().split('\n');

// %a of both libraries: 0x1.8p+1.
function value(text) {
  const parts = /^(-?)0x([01])(?:\.([0-9a-f]*))?p([+-]\d+)$/.exec(text);
  if (!parts) throw new Error(`no number: ${text}`);
  const [, sign, whole, rest = '', power] = parts;
  return (sign ? -1 : 1) * Number('0x' + whole + rest) * 2 ** (Number(power) - 4 * rest.length);
}

const here = lines(native), there = lines(process.execPath, web);
let equal = 0, worst = 0, worstLine = '';
const wrong = [];
if (here.length !== there.length) wrong.push(`${here.length} numbers here, ${there.length} there`);
for (let i = 0; i < Math.min(here.length, there.length); ++i) {
  if (here[i] === there[i]) { ++equal; continue; }
  const [a, b] = [here[i], there[i]].map(line => line.split(' '));
  const [x, y] = [a.pop(), b.pop()].map(value);
  const far = Math.abs(x - y) / Math.max(Math.abs(x), Math.abs(y));
  if (far > worst) { worst = far; worstLine = a.join(' '); }
  if (a.join(' ') !== b.join(' ') || !(far <= (a.join(' ').includes(' in water') ? 1e-11 : 1e-12))) wrong.push(`${here[i]}\n  against ${there[i]}`);
}
console.log(`${here.length} numbers: ${equal} equal bit for bit, the others within ${worst.toExponential(1)}${worstLine && ' (' + worstLine + ')'}`);
if (here.length < 1000) wrong.push('too few numbers: are the recipes there?');
for (const line of wrong.slice(0, 20)) console.error(line);
process.exit(wrong.length ? 1 : 0);
