import { saveText } from "../../pictures/kit/download.ts";
import { askText } from "../../worker/client.ts";

/** The report as one HTML page. @returns its name */
export async function saveReport(): Promise<string> {
  const { text, fileName } = await askText("report");
  saveText(fileName, text, "text/html");
  return fileName;
}
