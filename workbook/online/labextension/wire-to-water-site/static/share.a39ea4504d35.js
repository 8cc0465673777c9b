/* Files to and from the device's own share sheet, where the browser has one.
 *
 * A browser shares only kinds of files that it knows, so a file of answers goes as plain text.
 */
const KNOWN = "text/plain";

function fileOf(link) {
  const [head, data] = link.href.split(",");
  const bytes = Uint8Array.from(atob(data), (sign) => sign.charCodeAt(0));
  const kind = head.slice("data:".length).split(";")[0];
  const asText = kind === "application/jsonl";
  const name = asText ? link.download.replace(/\.jsonl$/, ".txt") : link.download;
  return new File([bytes], name, { type: asText ? KNOWN : kind });
}

/* Each link that saves a file has a button beside it, which shows where files can be shared. */
export function shareFiles() {
  const probe = new File(["1"], "probe.txt", { type: KNOWN });
  if (!navigator.canShare?.({ files: [probe] })) return;
  document.body.classList.add("wtw-shares");
  document.addEventListener("click", (event) => {
    const button = event.target.closest?.(".w2w-share");
    const link = button?.parentElement.querySelector("a[download]");
    if (!link) return;
    const files = [fileOf(link)];
    if (!navigator.canShare({ files })) link.click(); // it is saved instead
    else navigator.share({ files }).catch((error) => { if (error.name !== "AbortError") link.click(); });
  });
}

/* What was shared to the installed site, as names and texts; each is handed over once. */
export async function sharedFiles(base) {
  const name = `wire-to-water-shared ${base}`;
  if (!globalThis.caches || !(await caches.has(name))) return [];
  const cache = await caches.open(name);
  const requests = await cache.keys();
  const files = await Promise.all(requests.map(async (request) =>
    [new URL(request.url).searchParams.get("name"), await (await cache.match(request)).text()]));
  await caches.delete(name);
  return files;
}
