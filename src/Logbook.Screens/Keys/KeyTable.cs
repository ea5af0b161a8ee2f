namespace Logbook.Screens;

/// <summary>What one key does on one page: the one place that the footer, the help and the doing are drawn from.</summary>
/// <param name="Keys">As printed: <c>Enter</c>, <c>1-9</c>.</param>
/// <param name="Word">One or two words for the footer; empty when it is only in the help.</param>
/// <param name="Help">One sentence.</param>
internal sealed record KeyRow(string Keys, string Word, string Help, Func<Keystroke, bool> Takes, Func<Session, Keystroke, Setting, Next> Does)
{
    /// <summary>Why the key does nothing just now; null when it does.</summary>
    public Func<Session, string?> WhyNot { get; init; } = _ => null;

    /// <summary>False in a state in which the key means what a later row says.</summary>
    public Func<Session, bool> Applies { get; init; } = _ => true;

    public static KeyRow Letter(char letter, string word, string help, Func<Session, Setting, Next> does) =>
        new(letter.ToString(), word, help, key => key.Is(letter), (session, _, setting) => does(session, setting));

    public static KeyRow Named(string keys, string word, string help, Func<Session, Keystroke, Setting, Next> does, params KeyName[] names) =>
        new(keys, word, help, key => names.Contains(key.Name), does);
}

/// <summary>The keys of a page.</summary>
internal sealed record KeyTable(params IReadOnlyList<KeyRow> Rows)
{
    private const string Apart = "   ";
    private const string Close = "  ";

    /// <summary>Does what the key asks for, or says why it does not.</summary>
    public Next Press(Session session, Keystroke key, Setting setting)
    {
        if (Taking(session, key) is not { } row)
        {
            return Next.Of(key.Name == KeyName.Written && key.Rune.Value >= ' ' ? session.Say($"'{key.Rune}' does nothing here{(Rows.Contains(UsualKeys.Help) ? "; the last line has this page's keys, ? explains them" : "")}") : session);
        }

        return row.WhyNot(session) is { } why ? Next.Of(session.Say($"{row.Keys}: {why}")) : row.Does(session, key, setting);
    }

    /// <summary>As many keys as the line holds, in their order, closer to each other where that shows more; the way back and the last row always have their place.</summary>
    public Line Footer(Session session)
    {
        // Of two rows of one key the first that applies takes it: the other would promise what does not happen.
        var known = Rows.Where(r => r.Word.Length > 0 && Rows.First(o => o.Keys == r.Keys && (o == r || o.Applies(session))) == r && r.Applies(session) && WhyNot(session, r) is null).ToList();
        var (apart, close) = (Kept(known, Apart, session.Width), Kept(known, Close, session.Width));
        return Line.Of(" " + (close.SequenceEqual(apart) ? Text(apart, Apart) : Text(close, Close)), Look.Faint);
    }

    private static List<KeyRow> Kept(List<KeyRow> known, string between, int width)
    {
        var kept = known.Where((r, i) => r.Keys == "Esc" || i == known.Count - 1).ToHashSet();
        foreach (var row in known)
        {
            if (TextWidth.Of(Text(known.Where(r => r == row || kept.Contains(r)), between)) + 1 <= width)
            {
                kept.Add(row);
            }
        }

        return known.FindAll(kept.Contains);
    }

    /// <summary>Why a row of this table does nothing just now; null when it does.</summary>
    public string? WhyNot(Session session, KeyRow row) =>
        row.Keys.Length == 1 && Taking(session, Keystroke.Of(row.Keys[0])) is { } other && other != row ? "it is written like any other character" : row.WhyNot(session);

    private KeyRow? Taking(Session session, Keystroke key) => Rows.FirstOrDefault(r => r.Applies(session) && r.Takes(key));

    private static string Text(IEnumerable<KeyRow> rows, string between) => string.Join(between, rows.Select(r => $"{r.Keys} {r.Word}"));
}
