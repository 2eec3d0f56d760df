import { useTranslation } from "react-i18next";
import type { StandingPost } from "../../../electron/domain/lock/post.ts";
import { isDevice } from "../../app/table.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Tag } from "../marks/Tag.tsx";

/** Shows in the head that the desk is a volunteer's, and which one's. */
export function HandedOver({ post }: { readonly post: StandingPost }) {
  const { t } = useTranslation(["lock", "join"]);
  const to = useNameOfPost(post);
  // A device was not handed over by anybody: it joined for that.
  return <Tag tone="go">{isDevice ? t("join:here.role", { to }) : t("lock:handed.tag", { to })}</Tag>;
}

/** Returns a post's name: "Check-in", "Core". */
export function useNameOfPost(post: StandingPost): string {
  const { t } = useTranslation(["common", "lock", "join"]);
  const testWord = useTestWords();
  if (post.role === "station") return testWord(post.test, "ability");
  if (post.role === "second-judge") return t("join:secondJudge", { station: testWord(post.test, "ability") });
  return post.role === "check-in" ? t("common:place.checkIn") : t("lock:organiser");
}
