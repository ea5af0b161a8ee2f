using System.Globalization;
using Logbook.Checks.Examining;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Instruments that read otherwise than the laboratory: since when, by how much, what else explains it, what would tell.</summary>
internal static class OffLaboratory
{
    public static IEnumerable<AuditFlag> Flags(AuditSpan span) => AgainstLaboratory.Find(span.Desk, span.From, span.End).Select(d => Flag(span, d));

    private static AuditFlag Flag(AuditSpan span, Departure departure)
    {
        var site = span.Desk.Site;
        var point = departure.Point;
        var (tag, unit) = (Say.Visible(point.Tag), Say.Visible(departure.Unit));
        string Number(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
        var apart = departure.Last.Select(c => $"{Number(c.Instrument)} against {Number(c.Laboratory)} {unit} ({Say.Day(site, c.At)})");
        return new AuditFlag(
            "off-laboratory", Plant.Calendar.ShiftAt(site, departure.Since).Id, departure.Since, null, point.Tag,
            $"{tag} {Say.Visible(point.Description)}: about {Figures.Two(Math.Abs(departure.By))} {Say.Visible(point.Unit.Name)} too {(departure.By > 0 ? "high" : "low")} by the laboratory, since {Say.Day(site, departure.Since)}",
            null)
        {
            Evidence =
            [
                $"{FirstLetter.Large(Say.Visible(departure.Quantity))}, by {tag} against the laboratory: {string.Join(", ", apart)}; {Say.Count(departure.Comparisons, "comparison")} since then. When it was learned they were {Number(Math.Abs(departure.Usual))} apart.",
                $"Also seen when: the laboratory's acid, pipette or sampling place changed{(departure.Beside.Count == 0 ? "" : $"; {string.Join(" or ", departure.Beside.Select(Say.Visible))} is off, which goes into the same figure")}{(departure.WhenOff is { } why ? "; " + Say.Visible(why) : "")}.",
                $"Would settle: a check of {tag} with a second instrument, and one sample with freshly standardised acid.",
                "Not a finding about anyone.",
            ],
        };
    }
}
