using System.Text;

namespace Logbook.Screens;

/// <summary>The keys that the screens know.</summary>
public enum KeyName
{
    /// <summary>A key that writes something: see <see cref="Keystroke.Rune"/>.</summary>
    Written,
    Enter,
    Esc,
    Up,
    Down,
    Left,
    Right,
    PageUp,
    PageDown,
    Home,
    End,
    Tab,
    BackTab,
    Backspace,
    Delete,
}

/// <summary>One key.</summary>
public sealed record Keystroke(KeyName Name, Rune Rune = default)
{
    public static Keystroke Of(char letter) => new(KeyName.Written, new Rune(letter));

    internal bool Is(char letter) => Name == KeyName.Written && Rune.Value == letter;

    /// <summary>The digit that was typed, else null.</summary>
    internal int? Digit => Name == KeyName.Written && Rune.Value is >= '0' and <= '9' ? Rune.Value - '0' : null;
}
