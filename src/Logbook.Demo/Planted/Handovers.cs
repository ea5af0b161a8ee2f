using Logbook.Checks;
using Logbook.Demo.Line;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Demo.Planted;

/// <summary>Every shift change is handed over and signed; once somebody is called away, and the last change is taken over with a reservation.</summary>
internal sealed class Handovers(Scene scene, Script script, Chance chance)
{
    private static readonly string[] _ifThen =
    [
        "if the slaker bowl climbs above 102.5, then lime down first and call the supervisor",
        "if the green liquor tank passes 85 %, then tell the recovery boiler house before it overflows",
        "if the mud level rises on, then second filter into service, site procedure",
    ];

    private static readonly string[] _words =
        ["lime went in a little wet after midnight", "level valve at the filter sticks now and then", "titration bench needs acid soon", "quiet, but watch the weak wash"];

    private static readonly string[] _first =
        ["walk the slaker floor and look at the bowl", "white liquor tank and what the digester wants", "weak wash with the boiler house", "nothing beyond the list"];

    private static readonly TimeSpan NoChangeWithin = TimeSpan.FromHours(1);

    // The demo's own past costs nothing to sign; the PINs that people type later are kept at the full cost.
    private readonly Pins _pins = Everybody(scene.Site);

    public static void Plant(Scene scene, Script script, Chance chance) => new Handovers(scene, script, chance).All();

    private void All()
    {
        Begin();
        Emergency();
        var last = Calendar.ShiftAt(scene.Site, scene.Until).Start;
        foreach (var shift in Calendar.Shifts(scene.Site, scene.Start, scene.Until.AddHours(1)).Where(s => s.Start > scene.Start + NoChangeWithin))
        {
            Change(shift.Start, reservation: shift.Start == last);
        }
    }

    /// <summary>PINs are set, and the first one takes over from nobody: of the shift to come, when its change is less than an hour away.</summary>
    private void Begin()
    {
        var at = scene.Start.AddMinutes(2);
        var by = scene.Staff.Panel(scene.Start + NoChangeWithin);
        Add(at, desk => scene.Site.People.Select(p => PeopleChanges.SetPin(desk, Sign(), p.Code, p.Code, () => DemoSite.Pin)).Last());
        Add(at.AddMinutes(1), desk => Take(desk, new AcceptRequest(by, [_first[0]], []) { Unattended = "the log begins with this shift" }));
        Add(at.AddMinutes(40), desk => Countersigning.Countersign(desk, Sign(), scene.Staff.Supervisor, null, "first shift with this log, walked the line together"));
    }

    private void Emergency()
    {
        var at = Calendar.ShiftAt(scene.Site, Calendar.ShiftAt(scene.Site, scene.Until).Start.AddMinutes(-1)).Start.AddHours(4);
        if (!scene.Covers(at))
        {
            return;
        }

        var by = scene.Staff.Field(at);
        var planted = new PlantedEvent(
            "emergency-relief", at, null, "audit",
            "The panel operator was called away and the line was taken over in an emergency, without a PIN; a supervisor signed for it afterwards.", null);
        script.Events.Add(planted);
        Add(at, desk => Relieving.Emergency(desk, by, "other: called to the fire team"), planted);
        Add(at.AddMinutes(18), desk => Open(desk, by));
        Add(at.AddMinutes(95), desk => Countersigning.Countersign(desk, Sign(), scene.Staff.Supervisor, null, "talked with both, nothing was left running"));
    }

    private void Change(DateTimeOffset boundary, bool reservation)
    {
        var to = scene.Staff.Panel(boundary.AddMinutes(1));
        var (early, late) = (chance.Between(20, 30), chance.Between(2, 7));
        var (ifThen, words, first) = (chance.Pick(_ifThen), chance.Pick(_words), chance.Pick(_first));
        Add(boundary.AddMinutes(-early), desk => Preparing.Prepare(desk, Sign(), new PrepareRequest(Holder(desk), Declared(reservation), [ifThen], [words])));
        Add(boundary.AddMinutes(-late - 6), desk => Open(desk, to));
        var planted = reservation
            ? new PlantedEvent("reservation", boundary.AddMinutes(-late), null, "note", "The last shift change was taken over with a reservation: the acid section had not been checked.", null)
            : null;
        if (planted is not null)
        {
            script.Events.Add(planted);
        }

        Add(
            boundary.AddMinutes(-late),
            desk => Take(desk, new AcceptRequest(to, [first], []) { Reservation = reservation ? "acid not checked; asking the laboratory within the hour" : null }),
            planted);
    }

    /// <summary>The pages are opened, what came since included, the questions answered, and it is signed.</summary>
    private Handed Take(Desk desk, AcceptRequest request)
    {
        foreach (var page in HandoverPages.Missing(desk, request.By))
        {
            HandoverPages.Open(desk, request.By, page);
        }

        return Accepting.Accept(desk, Sign(), request with { Answers = [.. HazardQuestions.For(desk, request.By).Select(q => q.Right)] });
    }

    private static Handed Open(Desk desk, string by) => new[] { "hazards", "moving", "changed" }.Select(page => HandoverPages.Open(desk, by, page).Seen).Last();

    private static string Holder(Desk desk) => desk.State.Line.Holder?.Code ?? throw new InvalidOperationException("nobody holds the demo's line");

    private static Dictionary<string, string> Declared(bool acidUnchecked) =>
        HazardSections.All.ToDictionary(s => s, s => acidUnchecked && s == "acid" ? "not-checked" : "checked", StringComparer.Ordinal);

    private SignWith Sign() => new(_pins, _ => DemoSite.Pin);

    private void Add(DateTimeOffset at, Func<Desk, Handed> step, PlantedEvent? plants = null)
    {
        if (at <= scene.Until)
        {
            script.Acts.Add(new Act(at, desk => Saved(step(desk))) { Plants = plants });
        }
    }

    private static Written Saved(Handed handed) =>
        new(handed.Record, handed.Refused is null ? handed.Mistakes : [Mistake.Typed(handed.Refused)]);

    private static Pins Everybody(Site site)
    {
        var pins = new Pins(new PinsInMemory(), rounds: 1);
        foreach (var person in site.People)
        {
            pins.Set(person.Code, DemoSite.Pin);
        }

        return pins;
    }
}
