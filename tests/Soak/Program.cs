using System.Diagnostics;
using System.Globalization;
using Logbook.Storage.LiteDb.Tests;
using Logbook.Tests;
using Soak;

// Loses power and kills thousands of times, and ends with 1 when an acknowledged record was lost.
if (args is [Appender.Word, var child])
{
    return Appender.Save(child);
}

if (args.Length > 4 || args.Any(a => !int.TryParse(a, CultureInfo.InvariantCulture, out _)))
{
    Console.Error.WriteLine("accepted: [FIRST-SEED [POWER-CUTS [KILLS-OF-A-SAVING-LOOP [KILLS-OF-LOGBOOK-RECORD]]]], numbers");
    return 2;
}

int Number(int place, int usual) => args.Length > place ? int.Parse(args[place], CultureInfo.InvariantCulture) : usual;

var seed = Number(0, 1);
var report = new Report();
report.Run("lives with 1 to 3 power cuts, torn, reordered, half with EIO", Number(1, 5000), (run, line) =>
{
    var why = PowerCuts.WhyNot(seed + run, out var acknowledged);
    line.Acknowledged += acknowledged;
    return why is null ? null : $"seed {seed + run}: {why}";
});
Kills.OfASavingLoop(report, seed, Number(2, 300));
Kills.OfTheProgram(report, seed, Number(3, 1000));
return report.Lost ? 1 : 0;
