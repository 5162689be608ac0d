/** Being this person on this phone: by login and passphrase, or by a one-time code. */
import { type Signal, useSignal } from "@preact/signals";
import { CupChoice } from "../../parts/Choices.tsx";
import { MainKey } from "../../parts/Cup.tsx";
import { TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Part, Refusal } from "../../parts/Plain.tsx";
import { goTo } from "../../state/route.ts";
import { join, people, signIn } from "../../state/session.ts";
import { SIGN_IN } from "../../text/sign_in.ts";
import { KnownPeople } from "../people/KnownPeople.tsx";
import { focusFirst } from "../shared/focus.ts";
import { beside, besideNone, type Hindrance } from "../shared/sentences.ts";
import { type Answers, missing, NO_ANSWERS, refused, type Way } from "./answers.ts";
import "../shared/rows.css";
import { useFound } from "../shared/use_found.ts";

const WAYS = [
  { value: "sign_in", word: SIGN_IN.sign_in },
  { value: "join", word: SIGN_IN.join },
] as const;
const SHOWN = ["login", "passphrase", "join_code", "name"];
const CODE_CHARS_MAX = 24;
const NAME_CHARS_MAX = 120;
const PASSPHRASE_CHARS_MAX = 256;

/** `params.way` "join" opens the code at once, as a coordinator's link does; the link may bring it as `params.code`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const way = useSignal<Way>(params.way === "join" ? "join" : "sign_in");
  const typed = useSignal<Answers>({ ...NO_ANSWERS, code: params.code ?? "" });
  const passphrase = useSignal("");
  const found = useFound(typed);
  const isAsking = useSignal(false);
  const lacks = missing(way.value, typed.value, passphrase.value);

  async function comeIn() {
    isAsking.value = true;
    const { login, code, name } = typed.value;
    const answer =
      way.value === "join"
        ? await join({ join_code: code, name, login, passphrase: passphrase.value })
        : await signIn(login, passphrase.value);
    isAsking.value = false;
    found.value = refused(way.value, answer);
    if (found.value === null) goTo("/");
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
      <Refusal sentence={besideNone(found.value, SHOWN)} />
      <CupChoice
        name={SIGN_IN.ways}
        options={WAYS}
        chosen={way.value}
        onChoose={(chosen) => {
          way.value = chosen;
          found.value = null;
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
  const put = (field: keyof Answers) => (value: string) => {
    typed.value = { ...typed.value, [field]: value };
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
      {isJoin && (
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
