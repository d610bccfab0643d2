/** A row of a panel: its name, and its control beside it. */
import { Components } from 'leva/plugin';
import { useId } from 'react';

const { Row, Label } = Components as {
  Row: React.ComponentType<{ input?: boolean; children: React.ReactNode }>;
  Label: React.ComponentType<{ htmlFor: string; title?: string; children: string }>;
};

interface Props {
  title: string;
  about: string;
  children: (id: string) => React.ReactNode;
}

export function Labelled({ title, about, children }: Props) {
  const id = useId();
  return (
    <Row input>
      <Label htmlFor={id} title={about}>
        {title}
      </Label>
      {children(id)}
    </Row>
  );
}
