import { useEffect, useState } from "preact/hooks";
import { saveText } from "../../pictures/kit/download.ts";

/** The table for a spreadsheet: into the clipboard, or as a file. */
export function CopyCsv({ csvOf, fileName }: { csvOf: () => string; fileName: string }) {
  const [said, setSaid] = useState("");
  useEffect(() => {
    if (said === "") return undefined;
    const timer = setTimeout(() => setSaid(""), 4000);
    return () => clearTimeout(timer);
  }, [said]);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(csvOf());
      setSaid("Copied.");
    } catch {
      setSaid("This browser did not let the page copy: save the file instead.");
    }
  };
  return (
    <div class="copy-csv no-print">
      <button type="button" class="small" onClick={() => void copy()}>
        Copy all as CSV
      </button>
      <button type="button" class="small" onClick={() => saveText(`${fileName}.csv`, csvOf(), "text/csv")}>
        Save CSV
      </button>
      <span role="status">{said}</span>
    </div>
  );
}
