using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>A question about what the hazards page says, with three choices.</summary>
/// <param name="About">The record that it is about.</param>
/// <param name="Right">The number of the right choice, from 1.</param>
public sealed record HazardQuestion(long About, string Text, IReadOnlyList<string> Choices, int Right);

/// <summary>
/// One question from a hazard's own fields, three on a bad shift, none when nothing is open. What kills first is asked first: who
/// is inside, acid, trips, safety equipment; times and numbers only of the rest, or where a place would give itself away. Each hazard has a draw of its own
/// from who holds the line, who is asked and how often that one's answers did not agree: a look changes nothing, so that what was
/// shown is what is judged, and a hazard that comes moves none of the others' choices. After an answer that did not agree with the
/// page all is drawn anew, another thing is asked first where there is one, and the same never with its right choice in the same
/// place: trying out choices teaches nothing.
/// </summary>
public static class HazardQuestions
{
    private const int OnABadShift = 3;

    // Hours from the right time to the wrong ones offered. A time on the other side of now would give itself away.
    private static readonly double[] WrongBy = [-2, 1.5, 4, -5];

    public static IReadOnlyList<HazardQuestion> For(Desk desk, string by)
    {
        var (site, state, now) = (desk.Site, desk.State, desk.Now);
        var missed = state.Line.Missed.FindAll(m => Handed.Same(m.By, by));
        var seed = $"{by.ToUpperInvariant()} {state.Line.Holder?.Seq ?? 0} {missed.Count}";
        MissedQuestion? Missed(HazardQuestion q) => missed.FindLast(m => m.Text == q.Text);
        var questions = Hazards.Of(site, state, now).DistinctBy(h => h.Seq).Select(h => (Hazard: h, Draw: new Draw($"{seed} {h.Seq}")))
            .OrderBy(x => Rank(x.Hazard.Word)).ThenBy(x => x.Draw.Next()).Select(x => Asked(desk, x.Hazard, x.Draw)).OfType<HazardQuestion>().ToList();
        var asked = questions.Index().OrderBy(q => Missed(q.Item) is not null).ThenBy(q => questions.FindIndex(other => other.Text == q.Item.Text) != q.Index).Select(q => q.Item).Select(q => Missed(q)?.Right == q.Right ? Moved(q) : q);
        var bad = TakeLonger.Of(desk, site, state, now).Concat(TakeLonger.Away(desk, by)).Any();
        return [.. asked.Take(bad ? OnABadShift : 1)];
    }

    private static HazardQuestion Moved(HazardQuestion asked) =>
        asked with { Choices = [.. asked.Choices.Skip(1), asked.Choices[0]], Right = asked.Right == 1 ? asked.Choices.Count : asked.Right - 1 };

    private static int Rank(string word) => Array.IndexOf(First, word) is >= 0 and var rank ? rank : First.Length;

    // In the order in which they can hurt; of these the place is asked.
    private static readonly string[] First = ["inside", "permit", "acid", "defeated", "out"];

    private static HazardQuestion? Asked(Desk desk, HazardLine hazard, Draw draw)
    {
        var item = desk.State.Carried.Find(i => i.Id == hazard.Seq);
        return Array.IndexOf(First, hazard.Word) >= 0
            ? Place(desk, hazard, item, draw) ?? Figure(desk, hazard, item, draw)
            : Figure(desk, hazard, item, draw) ?? Place(desk, hazard, item, draw);
    }

    private static HazardQuestion? Figure(Desk desk, HazardLine hazard, CarriedItem? item, Draw draw)
    {
        var site = desk.Site;
        if (item is { Until: { } until })
        {
            // A time may be guessed from the trade; this one's own may not.
            string Said(DateTimeOffset at) => Say.Time(site, at, desk.Now);
            var others = WrongBy.Select(h => until.AddHours(h)).Where(at => at > desk.Now == until > desk.Now).Take(2);
            return Of(hazard, $"{Say.Kind(item.ItemKind)}, {Say.Equipment(site, item.On)}: until when?", Said(until), [.. others.Select(Said)], draw);
        }

        if (item is not null && item.Fields.FirstOrDefault(f => IsNumber(f.Value)) is { Key: not null } number)
        {
            var value = int.Parse(number.Value, CultureInfo.InvariantCulture);
            string Near(int by) => (value + by).ToString("D" + number.Value.Length, CultureInfo.InvariantCulture);
            return Of(hazard, $"{Say.Kind(item.ItemKind)}, {Say.Equipment(site, item.On)}: which {Say.Visible(number.Key)}?", number.Value, [Near(1), Near(3)], draw);
        }

        return null;
    }

    private static HazardQuestion? Place(Desk desk, HazardLine hazard, CarriedItem? item, Draw draw)
    {
        var site = desk.Site;
        if (item is { ItemKind: "safety-equipment" } && Of(hazard, Where(hazard.Word), Hazards.Name(site, item), [.. draw.Shuffled(SafetyThings.Others(site, desk.State)).Take(2)], draw) is { } ofItsKind)
        {
            return ofItsKind;
        }

        var on = item?.On ?? desk.State.Equipment.Values.FirstOrDefault(e => e.Seq == hazard.Seq)?.Equipment;
        return on is null ? null : Of(hazard, Where(hazard.Word), Say.Equipment(site, on), Elsewhere(desk, hazard.Word, on, draw), draw);
    }

    private static string Where(string word) => word switch
    {
        "inside" => "Where are people inside, as they were counted?",
        "permit" => "Where is a permit open?",
        "locked" => "What is locked and must not be started?",
        "defeated" => "Where is a trip or an interlock defeated?",
        "out" => "Which safety equipment is out?",
        "injury" => "Where was somebody hurt?",
        "release" => "Where did something get out?",
        _ => "What is in acid?",
    };

    /// <summary>Other equipment, of which the same is not recorded: a second right choice would be a wrong one.</summary>
    private static IReadOnlyList<string> Elsewhere(Desk desk, string word, string on, Draw draw)
    {
        var site = desk.Site;
        var same = Hazards.Of(site, desk.State, desk.Now).Where(h => h.Word == word || (word is "inside" or "permit" && h.Word is "inside" or "permit")).Select(h => h.Seq).ToHashSet();
        var places = desk.State.Carried.Where(i => same.Contains(i.Id)).Select(i => i.On).Concat(desk.State.Equipment.Values.Where(e => same.Contains(e.Seq)).Select(e => e.Equipment)).Append(on).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return [.. draw.Shuffled(site.Equipment.Where(e => !places.Contains(e.Code) && !places.Contains(e.Area)).Select(e => Say.Equipment(site, e.Code))).Distinct(StringComparer.Ordinal).Take(2)];
    }

    private static bool IsNumber(string text) => text.Length is > 0 and < 7 && text.All(char.IsAsciiDigit);

    private static HazardQuestion? Of(HazardLine hazard, string text, string right, IReadOnlyList<string> others, Draw draw)
    {
        var choices = draw.Shuffled(others.Append(right)).ToList();
        return choices.Distinct(StringComparer.Ordinal).Count() == 3 ? new HazardQuestion(hazard.Seq, text, choices, choices.IndexOf(right) + 1) : null;
    }

    /// <summary>An order that nobody can foresee by heart and that is the same at every terminal.</summary>
    private sealed class Draw(string seed)
    {
        private int _drawn;

        public IEnumerable<T> Shuffled<T>(IEnumerable<T> items) => items.Select(i => (Item: i, Key: Next())).OrderBy(x => x.Key).Select(x => x.Item).ToList();

        public uint Next() => BinaryPrimitives.ReadUInt32BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes($"{seed} {_drawn++}")));
    }
}
