namespace Logbook.Checks;

/// <summary>What a piece of equipment may be doing.</summary>
public static class EquipmentStates
{
    public static readonly IReadOnlyList<string> All = ["running", "starting", "stopped", "standby", "washing", "acid", "draining", "out"];

    /// <summary>Runs or is being started: what rests at standstill matters most at a start.</summary>
    public static bool IsAtWork(string state) => state is "running" or "starting";
}
