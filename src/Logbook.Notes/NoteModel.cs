using Logbook.Handover;
using Scriban.Runtime;

namespace Logbook.Notes;

/// <summary>The note as a template sees it: names, texts and lists, no .NET members.</summary>
internal static class NoteModel
{
    public const string Standing =
        "This note only reminds; it does not replace safety data sheets, site procedures, permits, local codes or qualified judgement. Where they differ, they win.";

    /// <summary>How the HTML notes look: black on white, readable on paper, nothing from outside.</summary>
    private static readonly Markup Style = new(PageStyle.Css);

    private const string Signatures = "Not signed: draft. Whoever hands over and whoever takes over sign here.";

    /// <param name="fault">Why the site's own template could not be used; empty when it could.</param>
    public static ScriptObject Of(HandoverNote note, NoteFormat format, string fault) => new(StringComparer.Ordinal)
    {
        ["site"] = note.Site,
        ["shift"] = note.ShiftId,
        ["period"] = note.Period,
        ["drawn"] = note.DrawnAt,
        ["take_longer"] = List(note.TakeLonger.Select(reason => (object)reason)),
        ["sections"] = List(note.Sections.Select(Section)),
        ["cautions"] = List(note.Cautions.Select(Caution)),
        ["trends"] = List(note.Trends.Select(t => Trend(t, format))),
        ["standing_line"] = Standing,
        ["signatures"] = SignedSoFar(note),
        ["gave"] = note.Gave,
        ["holds"] = note.Holds,
        ["own_words"] = List(note.OwnWords.Select(Line)),
        ["signed"] = List(note.Signatures.Select(signature => (object)signature)),
        ["records"] = note.Records,
        ["head"] = note.Head,
        ["style"] = Style,
        ["template_fault"] = fault,
    };

    /// <summary>How far the signing has come, in words.</summary>
    public static string SignedSoFar(HandoverNote note) =>
        note.Holds.Length > 0 ? "Taken over; what each signature means stands at the foot." : note.Gave.Length > 0 ? "Prepared; not taken over." : Signatures;

    /// <param name="fault">Why the site's own template could not be used; empty when it could.</param>
    public static ScriptObject Of(WeekNote note, NoteFormat format, string fault) => new(StringComparer.Ordinal)
    {
        ["site"] = note.Site,
        ["period"] = note.Period,
        ["drawn"] = note.DrawnAt,
        ["in_charge"] = note.InCharge,
        ["sections"] = List(note.Sections.Select(Section)),
        ["trends"] = List(note.Trends.Select(t => Trend(t, format))),
        ["standing_line"] = Standing,
        ["records"] = note.Records,
        ["head"] = note.Head,
        ["style"] = Style,
        ["template_fault"] = fault,
    };

    private static ScriptObject Section(NoteSection section) => new(StringComparer.Ordinal)
    {
        ["id"] = section.Id,
        ["title"] = section.Title,
        ["beside"] = section.Beside,
        ["lines"] = List(section.Lines.Select(Line)),
    };

    private static ScriptObject Line(NoteLine line) => new(StringComparer.Ordinal) { ["label"] = line.Label, ["text"] = line.Text };

    private static ScriptObject Caution(NoteCaution caution) => new(StringComparer.Ordinal)
    {
        ["hazard"] = caution.Hazard,
        ["text"] = caution.Text,
        ["ppe"] = caution.Ppe,
        ["first_aid"] = caution.FirstAid,
        ["source"] = caution.Source,
        ["revision"] = caution.Revision,
        ["draft"] = caution.Draft,
    };

    private static ScriptObject Trend(NoteTrend trend, NoteFormat format) => new(StringComparer.Ordinal)
    {
        ["point"] = trend.Point,
        ["title"] = trend.Title,
        ["unit"] = trend.Unit,
        ["words"] = TrendWords.Of(trend),
        ["picture"] = new Markup(format == NoteFormat.Html ? TrendPicture.Of(trend) : ""),
    };

    private static ScriptArray List(IEnumerable<object> items) => new(items);
}
