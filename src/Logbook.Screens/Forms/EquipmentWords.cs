using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>What a piece of equipment does, as it is known now, and what can hurt at it: a pump that is locked is not said to run because nobody said that it stands.</summary>
internal static class EquipmentWords
{
    // What the journal takes for granted until somebody says otherwise.
    private const string Running = "running";

    /// <summary><c>LOCKED, STOPPED since 04:10</c>, for a list.</summary>
    public static string Short(Session session, string code) => Words(session, code, Running, why: false);

    /// <summary><c>ACID since 04:10, scaled tubes</c>; of what nobody has said anything that it is taken to run.</summary>
    public static string Of(Session session, string code) => Words(session, code, $"{Running}, nobody has said otherwise", why: true);

    /// <summary>Nothing else is known of it.</summary>
    public static bool Runs(Session session, string code) => Hurts(session, code).Count == 0 && (!session.Facts.Equipment.TryGetValue(code, out var status) || status.State == Running);

    private static string Words(Session session, string code, string unsaid, bool why)
    {
        var hurts = Hurts(session, code);
        if (!session.Facts.Equipment.TryGetValue(code, out var status))
        {
            return hurts.Count == 0 ? unsaid : string.Join(", ", hurts);
        }

        var state = status.State.ToUpperInvariant();
        return $"{string.Join(", ", hurts.Where(h => h != state).Append(state))} since {Say.Time(session.Site, status.Since, session.Clock)}{(why && !string.IsNullOrWhiteSpace(status.Why) ? $", {Say.Visible(status.Why)}" : "")}";
    }

    /// <summary>The words of what is open at it, or in the area where it lies, and can hurt.</summary>
    private static List<string> Hurts(Session session, string code)
    {
        var open = session.Facts.Now.Carried.Where(i => YetRecorded.Covers(session.Site, i, code)).Select(i => i.Id).ToHashSet();
        return [.. session.Facts.Now.Hazards.Where(h => open.Contains(h.Seq)).Select(h => h.Word.ToUpperInvariant()).Distinct(StringComparer.Ordinal)];
    }
}
