using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Seven days for the supervisor: what can hurt now, what was handed over and how, what was not done, what comes back.</summary>
public sealed record WeekNote
{
    public required string Site { get; init; }

    /// <summary>From and to, in words.</summary>
    public required string Period { get; init; }

    /// <summary>Up to when the note tells.</summary>
    public required string DrawnAt { get; init; }

    /// <summary>Who holds the line now, in words.</summary>
    public required string InCharge { get; init; }

    public required IReadOnlyList<NoteSection> Sections { get; init; }

    public required IReadOnlyList<NoteTrend> Trends { get; init; }

    public required long Records { get; init; }

    public required string Head { get; init; }

    // The pictures of the week fill two sheets, no more.
    private const int Curves = 11;

    /// <summary>The week that ends with the shift that covers <paramref name="at"/>.</summary>
    public static WeekNote Of(Desk desk, DateTimeOffset at)
    {
        var site = SiteInForce.At(desk, at);
        var week = WeekFacts.Of(desk, site, Calendar.ShiftAt(site, at));
        return new WeekNote
        {
            Site = Say.Visible(site.Name),
            Period = $"{week.Day(week.From)} to {week.Day(week.To)}",
            DrawnAt = week.Day(week.Shift.AsOf) + (week.Shift.AsOf < week.To ? ", the last shift still running" : $", the last shift's end; entries typed later are in it{(desk.Now > week.To ? $"; what happened from then to now, {week.Day(desk.Now)}, is not counted" : "")}"),
            InCharge = Handover.InCharge.Of(desk),
            Sections =
            [
                HurtInTheWeek.Of(week), ShiftsOfTheWeek.Of(week),
                FlagLines.Of(week, "to-countersign", "WAITS FOR A SIGNATURE", Audit.ToCountersign),
                FlagLines.Of(week, "handovers", "HANDOVERS TO LOOK AT", "refused", "unattended", "emergency", "reservation"),
                FlagLines.Of(week, "hazards", "HAZARDS OPENED AND CLOSED", Audit.Contradicted, Audit.Hazard),
                NoteSection.Of("upsets", "UPSETS", NotNormal.Upsets(week.Shift)),
                ChecksOfTheWeek.Of(week),
                NoteSection.Of("not-normal", "NOT NORMAL", NotNormal.Lines(NotNormal.Excursions(week.Shift))),
                LimitsLeft.Of(week), Moving.Of(week.Shift),
                FlagLines.Of(week, "carried", "CARRIED: PAST ITS DATE, TOO LONG, NOT SEEN", "past-date", "carried-too-long", "not-seen"),
                FlagLines.Of(week, "unanswered", "WITHOUT AN ANSWER", "unanswered", "order-unread"),
                FlagLines.Of(week, "again", "THE SAME AGAIN", "recurrent"),
                FlagLines.Of(week, "later", "CORRECTED, TYPED OR SAID LATER", "corrected", "entered-later"),
                FlagLines.Of(week, "look-at", "TO LOOK AT", "off-laboratory", "same-as-earlier", "varies-less") with { Beside = "evidence only; not findings about anyone" },
                FlagLines.Of(week, "limits", "LIMITS AND CHECKS TO THINK OVER", "limit-never", "limit-always", "always-not-taken"),
                StocksHeld.Of(week.Shift), StandingOrders.Of(week.Shift),
            ],
            Trends = [.. ChecksOfTheWeek.Curve(week), .. Trending.Of(week.Shift, Curves)],
            Records = desk.State.Head.Seq,
            Head = desk.State.Head.Hash,
        };
    }
}
