using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>What a piece of equipment does, as it is known now.</summary>
internal static class EquipmentWords
{
    // What the journal takes for granted until somebody says otherwise.
    private const string Running = "running";

    /// <summary><c>ACID since 04:10</c>, for a list.</summary>
    public static string Short(Session session, string code) => session.Facts.Equipment.TryGetValue(code, out var status)
        ? $"{status.State.ToUpperInvariant()} since {Say.Time(session.Site, status.Since, session.Clock)}"
        : Running;

    /// <summary><c>ACID since 04:10, scaled tubes</c>; of what nobody has said anything that it is taken to run.</summary>
    public static string Of(Session session, string code) => session.Facts.Equipment.TryGetValue(code, out var status)
        ? $"{Short(session, code)}{(string.IsNullOrWhiteSpace(status.Why) ? "" : $", {Say.Visible(status.Why)}")}"
        : $"{Running}, nobody has said otherwise";

    public static bool Runs(Session session, string code) => !session.Facts.Equipment.TryGetValue(code, out var status) || status.State == Running;
}
