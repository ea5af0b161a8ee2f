namespace Logbook.Screens;

/// <summary>What one key does on one page: the one place that the footer, the help and the doing are drawn from.</summary>
/// <param name="Keys">As printed: <c>Enter</c>, <c>1-9</c>.</param>
/// <param name="Word">One or two words for the footer; empty when it is only in the help.</param>
/// <param name="Help">One sentence.</param>
internal sealed record KeyRow(string Keys, string Word, string Help, Func<Keystroke, bool> Takes, Func<Session, Keystroke, Setting, Next> Does)
{
    /// <summary>Why the key does nothing just now; null when it does.</summary>
    public Func<Session, string?> WhyNot { get; init; } = _ => null;

    public static KeyRow Letter(char letter, string word, string help, Func<Session, Setting, Next> does) =>
        new(letter.ToString(), word, help, key => key.Is(letter), (session, _, setting) => does(session, setting));

    public static KeyRow Named(string keys, string word, string help, Func<Session, Keystroke, Setting, Next> does, params KeyName[] names) =>
        new(keys, word, help, key => names.Contains(key.Name), does);
}

/// <summary>The keys of a page.</summary>
internal sealed record KeyTable(params IReadOnlyList<KeyRow> Rows)
{
    /// <summary>Does what the key asks for, or says why it does not.</summary>
    public Next Press(Session session, Keystroke key, Setting setting)
    {
        if (Rows.FirstOrDefault(r => r.Takes(key)) is not { } row)
        {
            return Next.Of(key.Name == KeyName.Written && key.Rune.Value >= ' ' ? session.Say($"'{key.Rune}' does nothing here; ? shows the keys") : session);
        }

        return row.WhyNot(session) is { } why ? Next.Of(session.Say($"{row.Keys}: {why}")) : row.Does(session, key, setting);
    }

    /// <summary>As many keys as the line holds, in their order; the last row always has its place.</summary>
    public Line Footer(Session session)
    {
        var shown = Rows.Where(r => r.Word.Length > 0 && r.WhyNot(session) is null).ToList();
        var last = shown.Count > 0 ? Text(shown[^1]) : "";
        var line = "";
        foreach (var row in shown.SkipLast(1))
        {
            if (TextWidth.Of((line + Text(row) + last).TrimEnd()) + 1 <= session.Width)
            {
                line += Text(row);
            }
        }

        return Line.Of(" " + (line + last).TrimEnd(), Look.Faint);
    }

    private static string Text(KeyRow row) => $"{row.Keys} {row.Word}   ";
}
