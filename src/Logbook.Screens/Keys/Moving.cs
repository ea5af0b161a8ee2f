namespace Logbook.Screens;

/// <summary>How the arrows and the page keys move along a list.</summary>
internal static class Moving
{
    public static readonly KeyName[] Keys = [KeyName.Up, KeyName.Down, KeyName.PageUp, KeyName.PageDown, KeyName.Home, KeyName.End];

    /// <summary>The place after the key, within 0 and <paramref name="count"/> - 1.</summary>
    public static int Move(int from, Keystroke key, int count, int page) => Math.Clamp(
        key.Name switch
        {
            KeyName.Up or KeyName.BackTab => from - 1,
            KeyName.Down or KeyName.Tab => from + 1,
            KeyName.PageUp => from - Math.Max(1, page),
            KeyName.PageDown => from + Math.Max(1, page),
            KeyName.Home => 0,
            KeyName.End => count - 1,
            _ => from,
        },
        0, Math.Max(0, count - 1));
}
