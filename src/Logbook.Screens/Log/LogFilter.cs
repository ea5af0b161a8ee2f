using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Which records are shown: those that have all the words, anywhere or in the place that a word names.</summary>
internal sealed record LogFilter(string Text)
{
    public static readonly LogFilter None = new("");

    public const string Accepted = "words; area=slaker kind=remark by=op1 shift=N in one place alone; empty shows all";

    private readonly string[] _words = Text.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    public bool IsEmpty => _words.Length == 0;

    /// <summary>Why it can show nothing: it names an area that there is not.</summary>
    public string? WhyNot => _words.Select(w => w.Split('=', 2)).FirstOrDefault(w => w is ["area", var area] && !Area.All.Any(a => Has(a, area))) is [_, var unknown]
        ? $"no area is called '{unknown}'; there are {string.Join(", ", Area.All)}" : null;

    public bool Shows(LogLine line) => Array.TrueForAll(_words, word => word.Split('=', 2) switch
    {
        ["area", var area] => line.Areas.Any(a => Has(a, area)),
        ["kind", var kind] => Has(line.Kind, kind),
        ["by", var by] => Has(line.By, by),
        ["shift", var shift] => Has(line.Shift, shift),
        _ => new[] { line.Words, line.By, line.Area, line.Kind, line.Shift }.Any(text => Has(text, word)),
    });

    private static bool Has(string text, string part) => text.Contains(part, StringComparison.OrdinalIgnoreCase);
}
