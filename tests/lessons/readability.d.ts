declare module 'text-readability' {
  const readability: {
    fleschKincaidGrade(text: string): number;
    fleschReadingEase(text: string): number;
  };
  export default readability;
}
