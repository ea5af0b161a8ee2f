using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>How a piece of text stands out. Its words say the same, so that nothing is lost without colour.</summary>
public enum Look
{
    Plain,
    Strong,
    Faint,
    Note,
    Watch,
    Urgent,

    /// <summary>What can hurt.</summary>
    Hurts,

    /// <summary>Where the next key goes.</summary>
    Field,

    /// <summary>The line that Enter opens.</summary>
    Chosen,
}

/// <summary>Text in one look. Control characters in it are visible from here on.</summary>
public sealed record Span
{
    public Span(string text, Look look = Look.Plain) => (Text, Look) = (Say.Visible(text), look);

    public string Text { get; }

    public Look Look { get; }
}

/// <summary>One line of the screen.</summary>
public sealed record Line(IReadOnlyList<Span> Spans)
{
    internal static readonly Line Empty = new([]);

    internal static Line Of(string text, Look look = Look.Plain) => new([new Span(text, look)]);

    internal static Line Of(params IReadOnlyList<Span> spans) => new(spans);

    public string Text => string.Concat(Spans.Select(s => s.Text));

    /// <summary>The line with <paramref name="end"/> set against the right edge, where there is room for it.</summary>
    internal Line With(Span end, int width)
    {
        var gap = width - TextWidth.Of(Text) - TextWidth.Of(end.Text);
        return gap < 1 ? this : new([.. Spans, new Span(new string(' ', gap)), end]);
    }

    /// <summary>The line in one look: the chosen one.</summary>
    internal Line In(Look look) => new([.. Spans.Select(s => new Span(s.Text, look))]);

    /// <summary>No wider than the screen.</summary>
    internal Line Cut(int width)
    {
        var spans = new List<Span>();
        foreach (var span in Spans)
        {
            var cut = TextWidth.Cut(span.Text, width);
            spans.Add(new Span(cut, span.Look));
            width -= TextWidth.Of(cut);
        }

        return new Line(spans);
    }
}

/// <summary>The whole screen: exactly as many lines as it is high.</summary>
public sealed record Sheet(IReadOnlyList<Line> Lines)
{
    /// <summary>What stands there until the site is open.</summary>
    public static readonly Sheet Opening = new([Line.Of(" Opening the logbook ...", Look.Faint)]);

    public string Text => string.Join('\n', Lines.Select(l => l.Text.TrimEnd()));
}
