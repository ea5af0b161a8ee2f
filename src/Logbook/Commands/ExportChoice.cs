using System.CommandLine;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>What of the journal is asked for; everything when no point and no span is given.</summary>
internal sealed record ExportChoice(bool Csv, IReadOnlyCollection<string> Points, DateTimeOffset? From, DateTimeOffset? To)
{
    public static ExportChoice? Of(
        Shell shell, ParseResult parse, Option<string[]> points, (Option<string?> From, Option<string?> To) span, string format, out List<Mistake> mistakes)
    {
        mistakes = [];
        var tags = parse.GetValue(points) ?? [];
        if (tags.Length == 0 && parse.GetValue(span.From) is null && parse.GetValue(span.To) is null)
        {
            return new ExportChoice(format == "csv", [], null, null);
        }

        if (format != "csv")
        {
            mistakes.Add(Mistake.Typed("jsonl is the whole journal: --point, --from and --to choose of csv alone", "--format csv"));
            return null;
        }

        // Only a choice needs the site: its points and its time.
        var files = SiteReader.Load(OpenSite.Folder(shell, parse));
        if (!files.Ok || SiteReader.Read(files.Value!) is not { Value: { } site })
        {
            mistakes.AddRange(files.Ok ? SiteReader.Read(files.Value!).Mistakes : files.Mistakes);
            return null;
        }

        mistakes.AddRange(tags.Where(t => site.FindPoint(t) is null).Select(t => Mistake.Typed($"there is no point {t}", Spelling.Accepted(t, [.. site.Points.Select(p => p.Tag)]))));
        var now = shell.Clock.GetUtcNow();
        var (from, to) = (Options.Time(parse, span.From, site, now, mistakes), Options.Time(parse, span.To, site, now, mistakes));
        return mistakes.Count > 0 ? null : new ExportChoice(true, tags, from, to);
    }

    public bool Wants(ReadingRow row) =>
        (Points.Count == 0 || Points.Contains(row.Reading.Point, StringComparer.OrdinalIgnoreCase))
        && (From is null || row.Reading.At >= From) && (To is null || row.Reading.At < To);
}
