using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What a step of the screen may ask: the time, and what an entry would be judged to be. Both are handed in.</summary>
internal sealed record Setting(DateTimeOffset Now, Func<EntryRequest, Parsed<Entry>> Judge);

/// <summary>The state after a message, and what is to be done outside.</summary>
internal sealed record Next(Session Session, IReadOnlyList<Effect> Effects)
{
    public static Next Of(Session session, params IReadOnlyList<Effect> effects) => new(session, effects);
}
