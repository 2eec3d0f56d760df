import { createRoot } from "react-dom/client";
import "../app/base.css";
import "../app/print.css";
import { Page } from "./Page.tsx";
import { tableInPage } from "./table.ts";
import { setUpWords } from "./words.ts";

const root = document.getElementById("root");
if (root === null) throw new Error("The page has no root element.");
setUpWords();
createRoot(root).render(<Page data={tableInPage()} />);
