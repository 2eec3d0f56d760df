import type { ComponentProps } from "react";
import { Stack } from "./Stack.tsx";

interface FormProps extends Omit<ComponentProps<typeof Stack>, "as" | "onSubmit"> {
  readonly onSubmit: () => void;
}

/** Children stacked vertically in a form that the program sends itself: the page is not loaded again. */
export function Form({ onSubmit, ...props }: FormProps) {
  return (
    <Stack
      as="form"
      {...props}
      onSubmit={(event) => {
        event.preventDefault();
        onSubmit();
      }}
    />
  );
}
