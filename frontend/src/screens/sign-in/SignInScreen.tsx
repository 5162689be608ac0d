/** Being this person on this phone: by login and passphrase, or by a one-time code. */
import { type Signal, useSignal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import { CupChoice } from "../../parts/Choices.tsx";
import { MainKey } from "../../parts/Cup.tsx";
import { TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Part, Refusal } from "../../parts/Plain.tsx";
import { goTo } from "../../state/route.ts";
import { join, people, signIn } from "../../state/session.ts";
import { choiceOfPhone, rememberOnPhone } from "../../state/settings.ts";
import { SIGN_IN } from "../../text/sign_in.ts";
import { focusFirst } from "../common/focus.ts";
import { beside, besideNone, type Hindrance } from "../common/sentences.ts";
import { KnownPeople } from "../people/KnownPeople.tsx";
import { type Answers, asksWho, keptOf, missing, refused, reopened, type Way } from "./answers.ts";
import "../common/rows.css";
import { useFound } from "../common/use_found.ts";

const WAYS = [
  { value: "sign_in", word: SIGN_IN.sign_in },
  { value: "join", word: SIGN_IN.join },
] as const;
const WHO = ["login", "name"];
const KEPT = "sign_in_form"; // what was typed, but the passphrase and the code
const CODE_CHARS_MAX = 24;
const NAME_CHARS_MAX = 120;
const PASSPHRASE_CHARS_MAX = 256;

/** `params.way` "join" opens the code at once, as a coordinator's link does; the link may bring it as `params.code`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const left = useMemo(() => reopened(choiceOfPhone(KEPT)), []);
  const way = useSignal<Way>(params.way === "join" ? "join" : (left.way ?? "sign_in"));
  const typed = useSignal<Answers>({ ...left.typed, code: params.code ?? "" });
  const passphrase = useSignal("");
  const found = useFound(typed);
  const isAsking = useSignal(false);
  const lacks = missing(way.value, typed.value, passphrase.value);

  const isWhoShown = way.value === "sign_in" || asksWho(way.value, typed.value);
  const shown = ["passphrase", "join_code", ...(isWhoShown ? WHO : [])];

  async function comeIn() {
    isAsking.value = true;
    const { login, code, name } = typed.value;
    const who = asksWho(way.value, typed.value) ? { name, login } : { name: "", login: "" };
    const answer =
      way.value === "join"
        ? await join({ join_code: code, ...who, passphrase: passphrase.value })
        : await signIn(login, passphrase.value);
    isAsking.value = false;
    found.value = refused(way.value, answer);
    if (found.value !== null) return;
    rememberOnPhone(KEPT, null);
    goTo("/");
  }

  return (
    <Frame
      where={SIGN_IN.where}
      title={way.value === "join" ? SIGN_IN.title_join : SIGN_IN.title_sign_in}
      calm={way.value === "join" ? SIGN_IN.join_signal_once : SIGN_IN.signal_once}
      benchName={SIGN_IN.bench}
      bench={
        <Foot>
          <MainKey
            words={WAYS.find((each) => each.value === way.value)?.word}
            notReady={isAsking.value ? SIGN_IN.asking : (lacks?.sentence ?? null)}
            onNotReady={() => focusFirst(lacks?.field)}
            onPress={() => void comeIn()}
          />
        </Foot>
      }
    >
      <Refusal sentence={besideNone(found.value, shown)} />
      <CupChoice
        name={SIGN_IN.ways}
        options={WAYS}
        chosen={way.value}
        onChoose={(chosen) => {
          way.value = chosen;
          found.value = null;
          rememberOnPhone(KEPT, keptOf(chosen, typed.value));
        }}
      />
      <PersonFields way={way.value} typed={typed} passphrase={passphrase} found={found.value} />
      {people.value.length > 0 && (
        <Part title={SIGN_IN.known}>
          <KnownPeople />
        </Part>
      )}
    </Frame>
  );
}

function PersonFields(props: {
  way: Way;
  typed: Signal<Answers>;
  passphrase: Signal<string>;
  found: Hindrance | null;
}) {
  const { typed, found } = props;
  const isJoin = props.way === "join";
  const isAsked = asksWho(props.way, typed.value);
  const put = (field: keyof Answers) => (value: string) => {
    typed.value = { ...typed.value, [field]: value };
    rememberOnPhone(KEPT, keptOf(props.way, typed.value));
  };
  return (
    <>
      {isJoin && (
        <div id="field-join_code">
          <TextField
            label={SIGN_IN.code}
            hint={SIGN_IN.code_hint}
            value={typed.value.code}
            onValue={put("code")}
            isCode
            mostChars={CODE_CHARS_MAX}
            autocomplete="one-time-code"
            refusal={beside(found, "join_code")}
          />
        </div>
      )}
      {isAsked && (
        <div id="field-name">
          <TextField
            label={SIGN_IN.name}
            value={typed.value.name}
            onValue={put("name")}
            mostChars={NAME_CHARS_MAX}
            autocomplete="name"
            refusal={beside(found, "name")}
          />
        </div>
      )}
      {(isAsked || !isJoin) && (
        <div id="field-login">
          <TextField
            label={isJoin ? SIGN_IN.own_login : SIGN_IN.login}
            hint={isJoin ? SIGN_IN.own_login_hint : SIGN_IN.login_hint}
            value={typed.value.login}
            onValue={put("login")}
            type="email"
            autocomplete="username"
            refusal={beside(found, "login")}
          />
        </div>
      )}
      {isJoin && !isAsked && <p class="second">{SIGN_IN.code_says_who}</p>}
      <div id="field-passphrase">
        <TextField
          label={isJoin ? SIGN_IN.new_passphrase : SIGN_IN.passphrase}
          {...(isJoin ? { hint: SIGN_IN.new_passphrase_hint } : {})}
          value={props.passphrase.value}
          onValue={(value) => {
            props.passphrase.value = value;
          }}
          type="password"
          mostChars={PASSPHRASE_CHARS_MAX}
          autocomplete={isJoin ? "new-password" : "current-password"}
          refusal={beside(found, "passphrase")}
        />
      </div>
    </>
  );
}
