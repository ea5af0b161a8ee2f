namespace Logbook.Handover;

/// <summary>What the tanks held at their newest reading, each with the hours that it lasts; an old one says how old it is.</summary>
internal static class StocksHeld
{
    private const string WhenNothingComesIn = "when nothing comes in";

    public static NoteSection Of(ShiftFacts facts)
    {
        var stocks = Stock.Of(facts.Site, facts.State);
        var tanks = stocks.Where(s => !s.Lasts).Select(level => (Level: level, Hours: stocks.Where(h => IsOf(facts, h, level)).ToList())).ToList();
        return NoteSection.Of("stocks", "STOCKS", stocks.Except(tanks.SelectMany(t => t.Hours)).Select(s => new NoteLine(Say.Visible(s.Point), Line(facts, s, [.. tanks.Where(t => t.Level == s).SelectMany(t => t.Hours)]))));
    }

    private static string Line(ShiftFacts facts, Stock stock, IReadOnlyList<Stock> hours) =>
        $"{stock.Title} {stock.Value} at {facts.Time(stock.At)}{Old(facts, stock)}{string.Concat(hours.Select(h => Beside(h)))} {Say.Ref(hours.Select(h => h.Seq).Prepend(stock.Seq))}";

    private static string Beside(Stock hours)
    {
        var words = hours.Title.Contains(WhenNothingComesIn, StringComparison.OrdinalIgnoreCase) ? $"{hours.Value} {WhenNothingComesIn}" : $"{hours.Title} {hours.Value}";
        return $", {words}";
    }

    private static string Old(ShiftFacts facts, Stock stock) => facts.AsOf - stock.At > stock.Fresh ? ", OLD" : "";

    private static bool IsOf(ShiftFacts facts, Stock hours, Stock level) =>
        hours.Lasts && facts.Site.FindPoint(hours.Point) is { } h && facts.Site.FindPoint(level.Point) is { } l && Stock.IsHoursOf(facts.Site, h, l);
}
