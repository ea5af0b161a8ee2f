using System.Diagnostics;
using System.Globalization;
using Logbook;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Plant;
using Logbook.PluginHost;
using Benchmarks;

if (args is [ColdPlugins.Word, var folder])
{
    ColdPlugins.Load(folder);
    return;
}

if (args is [StoreMemory.Word, var which, var where])
{
    StoreMemory.Read(which, where);
    return;
}

if (args is ["calculations"])
{
    Table.Header();
    Calculations();
    return;
}

// A durable save of a 40-reading entry, 'now', and a start of the command line: on an empty journal and on a long one.
Console.WriteLine($"{Environment.ProcessorCount} cores, {RuntimeName()}, {DateTimeOffset.FromUnixTimeSeconds(TimeProvider.System.GetUtcNow().ToUnixTimeSeconds()):yyyy-MM-dd}");
if (args is ["audit", ..])
{
    AuditTable.Print(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 100);
    return;
}

if (args is ["store", ..])
{
    var lengths = args.Skip(1).Select(a => int.Parse(a, CultureInfo.InvariantCulture)).ToList();
    StoreTable.Print(lengths.Count > 0 ? lengths : [0, 100_000, 1_000_000, 5_000_000]);
    return;
}

if (args is ["server", ..])
{
    var sizes = args.Skip(1).Select(a => int.Parse(a, CultureInfo.InvariantCulture)).ToList();
    int At(int i, int usual) => sizes.ElementAtOrDefault(i) is > 0 and var said ? said : usual;
    ServerTable.Print(lines: At(0, 20), days: At(1, 5 * 365), audited: At(2, 365), real: At(3, 182));
    return;
}

if (args is ["history", ..])
{
    HistoryTable.Print(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 5, args.ElementAtOrDefault(2));
    return;
}

if (args is ["examine"])
{
    ExamineTable.Print();
    return;
}

if (args is ["screen", ..])
{
    ScreenTable.Print(soakAlone: args is [_, "soak"]);
    return;
}

Table.Header();
foreach (var readings in new[] { 0, 100_000 })
{
    using var site = BenchSite.With(readings);
    var label = string.Create(CultureInfo.InvariantCulture, $"{readings:N0} readings");
    site.WithDesk(desk => Table.Row($"record, 40 readings, in process, {label}", 200, () => site.Record(desk)));
    Table.Row($"now, journal opened anew, {label}", 10, () => site.WithDesk(desk => NowView.Of(desk)));
    Table.Row($"start of the command line: logbook now, {label}", 10, () => site.Start("now"));
}

using (var site = BenchSite.With(0))
{
    Table.Row("start of the command line: logbook --help", 10, () => site.Start("--help"));
    Table.Row("start of the command line: logbook calc list", 10, () => site.Start("calc list"));
}

Calculations();

// What is bound in the starter site, on one entry; and what the plug-ins add to a start.
static void Calculations()
{
    using var site = BenchSite.With(0);
    site.WithDesk(desk =>
    {
        var shift = new WholeShift(desk);
        Table.Row($"42 readings judged, {shift.Calculations} calculations with uncertainty", 200, shift.Judge);
    });
    Table.Row("what the plug-ins add to a start: found, vetted, loaded", ColdPlugins.InNewProcesses(10, site.Folder));
}

static string RuntimeName() => System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription;
