using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>One line's life with several power cuts and, in half of the lives, one step that fails; all of it decided by one number.</summary>
internal static class PowerCuts
{
    private const int MostCuts = 3;
    private const int MostSteps = 160; // about two shifts; one that ends earlier is cut at its end
    private const int FirstSteps = 12; // where a journal is made, or recovers

    /// <summary>Why an acknowledged record is not there or the journal does not go on; null when all is well.</summary>
    /// <param name="seed">Decides the sizes, the moments and what the disk keeps.</param>
    /// <param name="acknowledged">How many saves were acknowledged in all.</param>
    public static string? WhyNot(int seed, out int acknowledged)
    {
        var chance = new Random(seed);
        var shift = new SimulatedShift
        {
            Saves = chance.Next(1, 40),
            SavesPerBurst = chance.Next(1, 12),
            RecordSize = chance.Next(4) switch { 0 => 1, 1 => 400, 2 => 3000, _ => 20_000 },
            LogLimit = chance.Next(4, 60) * FrameHeader.PageSize,
        };
        var disk = new SimulatedDisk(chance);
        var cuts = chance.Next(1, MostCuts + 1);
        var failing = 0;
        for (var cut = 0; cut < cuts; cut++)
        {
            var fails = chance.Next(2) == 0 ? Within(chance, cut) : 0;
            var ends = Within(chance, cut) + fails;
            failing += fails > 0 ? 1 : 0;
            disk.Before = (now, _) => Happen(now == fails, now >= ends);
            try
            {
                shift.WorkOn(disk);
            }
            catch (PowerCutException)
            {
                // As it should.
            }

            disk = disk.AfterPowerCut();
        }

        acknowledged = shift.Acknowledged.Count;
        return shift.WhyNot(disk, unacknowledged: cuts)
            ?? (shift.Refused.Count > failing ? $"refused: {shift.Refused[^1].Message}" : null);
    }

    private static int Within(Random chance, int cut) => chance.Next(1, cut > 0 || chance.Next(2) == 0 ? FirstSteps : MostSteps);

    private static void Happen(bool fails, bool ends)
    {
        if (ends)
            throw new PowerCutException();
        if (fails)
            throw new IOException("the disk failed", 5); // EIO
    }
}
