using Logbook.Journal;

namespace Logbook.Screens.Tests;

public sealed class CarriedPageTests
{
    [Fact]
    public void Carried_items_are_confirmed_one_by_one_with_a_key_what_can_hurt_first()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("temporary-change", "slaker", "hose for seal water", Logbook.Testing.Some.Morning.AddHours(9));
            t.Carry("safety-equipment", "slaker", "no flow", null, ("instead", "the one at the stair"));
            t.Carry("action", "slaker", "tighten the guard");
        });

        terminal.Press("c1↓2clamp is loose⏎↓n");

        var looks = terminal.Journal.Read().Select(r => r.Body).OfType<CarryConfirmed>().ToList();
        Assert.Equal([(4, true), (3, true), (5, false)], looks.Select(l => (l.Id, l.Seen)));
        Assert.Equal("clamp is loose", looks[1].Changed);
        Assert.Contains("NOT SEEN 09:05 Operator one", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void With_nothing_open_the_keys_say_so()
    {
        using var terminal = new Terminal();

        Assert.Contains("1: nothing is open", terminal.Press("c1").Screen, StringComparison.Ordinal);
    }
}
