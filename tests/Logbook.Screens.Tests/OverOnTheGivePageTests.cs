using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens.Tests;

/// <summary>What could hurt in the shift and is over: the note prints it, so the page on which it is declared does not say that none is recorded.</summary>
public sealed class OverOnTheGivePageTests
{
    private static readonly (string, string)[] Gas = [("WL-CE,Caus", "ST-H2S,H2S at the sump,site,ppm,read,1,0.1,0.3,0,500,,,1,5,,6h,,,,,yes\nWL-CE,Caus")];

    [Fact]
    public void Gas_that_is_gone_a_release_and_an_injury_that_are_closed_say_since_when_they_are_over()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.HeldBy("op1");
            var (release, hurt) = (t.Carry("release", "slaker", "liquor over the launder"), t.Carry("injury", "slaker", "caustic on a hand", null, ("who", "op3")));
            t.At(-20).Record(null, "ST-H2S=12.4");
            t.At(-10).Record(null, "ST-H2S=0.4");
            t.At(-8);
            Assert.Empty(Writing.CloseCarried(t.Desk, new CarryClosed(release, "hosed to the sump"), "op1").Mistakes);
            Assert.Empty(Writing.CloseCarried(t.Desk, new CarryClosed(hurt, "back at work"), "op1").Mistakes);
        }, changed: Gas);

        terminal.Size(120, 40).Press("h");

        Assert.Contains("gas - over since 08:50: H2S at the sump 12.4 ppm", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("injury - over since 08:52 injury, Slaker: back at work", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("release - over since 08:52 release, Slaker: hosed to the sump", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("acid - none recorded", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(HandoverNote.InHand(terminal.Desk).Sections[0].Lines, l => l.Text.Contains("none recorded", StringComparison.Ordinal) && l.Text.Contains("gas", StringComparison.Ordinal));
    }

    [Fact]
    public void What_ends_while_the_page_stands_is_said_as_over_and_asked_anew()
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"), changed: Gas);
        terminal.Desk.Write(RecordEntry.Judge(terminal.Desk, Testing.Some.Entry("ST-H2S=12.4")).Value!, terminal.Desk.Now, "op1");
        terminal.Tick(1).Press("h11111111");

        terminal.Tick(1);
        terminal.Desk.Write(RecordEntry.Judge(terminal.Desk, Testing.Some.Entry("ST-H2S=0.4")).Value!, terminal.Desk.Now, "op1");
        terminal.Tick(1);

        Assert.Contains("gas ASK ANEW over since 09:07: H2S at the sump 12.4 ppm", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_remark_that_tells_of_an_injury_stands_there_with_its_time()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.HeldBy("op1");
            Assert.Empty(Writing.Remark(t.Desk, "splashed in the face, rinsed", "slaker", null, "op1").Mistakes);
        });

        terminal.Press("h");

        Assert.Contains("injury - told 08:02: Slaker: splashed in the face, rinsed", terminal.Words, StringComparison.OrdinalIgnoreCase);
    }
}
