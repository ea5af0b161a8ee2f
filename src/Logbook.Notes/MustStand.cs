using System.Text.RegularExpressions;
using Logbook.Handover;

namespace Logbook.Notes;

/// <summary>
/// What a note may not leave out, whatever its template says: each hazard in full, the reasons to take longer, reservations,
/// that it is not taken over, the standing line, the chain's head. What a template leaves out is printed above it.
/// </summary>
internal sealed partial record MustStand(IReadOnlyList<MustStand.Part> Parts, IReadOnlyList<string> DraftCautions)
{
    private const string DraftMark = "DRAFT";
    private const string Heading = "LEFT OUT BY THE SITE'S OWN TEMPLATE, and said here because a handover must not be without it:";

    /// <param name="Words">What must be on the paper.</param>
    /// <param name="Label">Said before the words where the template does not.</param>
    internal sealed record Part(string Words, string Label = "")
    {
        public string Said => Label.Length == 0 ? Words : $"{Label}: {Words}";
    }

    public static MustStand Of(HandoverNote note) => new(
        [
            .. Hazards(note.Sections), .. note.TakeLonger.Select(reason => new Part(reason, "TAKE LONGER")),
            .. note.OwnWords.Where(w => w.Label == "reservation").Select(w => new Part(w.Text, w.Label)),
            .. note.Holds.Length == 0 ? [new Part(NoteModel.SignedSoFar(note))] : Array.Empty<Part>(),
            new Part(NoteModel.Standing), new Part(note.Head, "head of the journal's chain"),
        ],
        [.. note.Cautions.Where(c => c.Draft).Select(c => c.Text)]);

    public static MustStand Of(WeekNote note) => new([.. Hazards(note.Sections), new Part(NoteModel.Standing), new Part(note.Head, "head of the journal's chain")], []);

    /// <summary>What is not in what came out. A comment is read by nobody, so it does not count.</summary>
    public IReadOnlyList<string> MissingIn(string printed, NoteFormat format)
    {
        var words = Bare(format == NoteFormat.Text ? printed : Comment().Replace(printed, ""));
        bool Stands(string text) => words.Contains(Bare(Escape.For(format, text)), StringComparison.OrdinalIgnoreCase);
        return
        [
            .. Parts.Where(p => !Stands(p.Words)).Select(p => p.Said),
            .. DraftCautions.Any(Stands) && !Stands(DraftMark) ? ["The cautions are drafts, not approved by the site."] : Array.Empty<string>(),
        ];
    }

    /// <summary>The note with what it leaves out above it.</summary>
    public string Marked(string printed, NoteFormat format)
    {
        var missing = MissingIn(printed, format);
        return missing.Count == 0 ? printed : format switch
        {
            NoteFormat.Html => Body().IsMatch(printed) ? Body().Replace(printed, body => body.Value + Html(missing), 1) : Html(missing) + printed,
            NoteFormat.Markdown => $"**{Heading}**\n\n{string.Concat(missing.Select(m => $"- {Escape.For(format, m)}\n"))}\n{printed}",
            _ => Columns.Wrap($"{Heading}\n{string.Concat(missing.Select(m => $" ! {Escape.For(format, m)}\n"))}{new string('=', Columns.Width)}\n") + printed,
        };
    }

    private static string Html(IEnumerable<string> missing) =>
        $"\n<div role=\"alert\" style=\"border:3px solid #111;padding:0 .7rem\"><p><b>{Escape.Html(Heading)}</b></p><ul>{string.Concat(missing.Select(m => $"<li>{Escape.Html(m)}</li>"))}</ul></div>\n";

    /// <summary>What can hurt, and what came since it was prepared and can hurt.</summary>
    private static IEnumerable<Part> Hazards(IEnumerable<NoteSection> sections) => sections.SelectMany(s => s.Id switch
    {
        "can-hurt" => s.Lines,
        "since-prepared" => s.Lines.Where(l => l.Text.StartsWith("CAN HURT", StringComparison.Ordinal)),
        _ => [],
    }).Select(l => new Part(l.Text, l.Label));

    // Lines are broken anew on paper, so spaces tell nothing.
    private static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    [GeneratedRegex("<!--.*?-->", RegexOptions.Singleline | RegexOptions.NonBacktracking)]
    private static partial Regex Comment();

    [GeneratedRegex("<body[^>]*>", RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex Body();
}
