import { render } from "preact";
import "./style/tokens.css";
import "./style/base.css";
import "./style/shell.css";
import "./style/fields.css";
import "./style/views.css";
import "./style/print.css";
import { App, fetchAllViews } from "./app.tsx";
import { followTheme } from "./state/theme.ts";
import { startOffline } from "./offline/offline.ts";
import { startKeeping } from "./state/keeping.ts";
import { followScroll } from "./state/scroll.ts";
import { followAddress } from "./state/view.ts";
import { firstQuiet, startEngine } from "./worker/client.ts";

await startKeeping();
followScroll();
followAddress();
followTheme();
startEngine();
render(<App />, document.querySelector("#page")!);
// Fetching the rest of the page, and all of it once more, would be in the way of its first answer.
firstQuiet(() => {
  fetchAllViews();
  startOffline();
});
