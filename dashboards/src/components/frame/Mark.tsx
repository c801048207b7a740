/** Our mark: a wall, and a room that slides out of it. */
export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 32 32" aria-hidden="true" focusable="false">
      <path class="mark-wall" d="M8 3h4v6H8zM8 23h4v6H8z" />
      <path class="mark-room" d="M8 11h20v10H8z" />
      <path class="mark-rail" d="M12 14.5h12M12 17.5h12" />
    </svg>
  );
}
