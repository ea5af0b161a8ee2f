using Logbook.Checks;
using Logbook.Checks.Examining;

namespace Logbook.Demo.Planted;

/// <summary>When the line has been read for some days the engineer lets the cross-examination learn from them.</summary>
internal static class FirstFit
{
    private static readonly TimeSpan _learned = TimeSpan.FromDays(4.5);

    /// <summary>What is planted begins before the last three days; a shorter history holds no fit.</summary>
    private static readonly TimeSpan _rest = TimeSpan.FromHours(36);

    /// <summary>When it is learned.</summary>
    public static DateTimeOffset At(Scene scene) => scene.Start + _learned;

    public static void Plant(Scene scene, Script script)
    {
        var at = At(scene);
        if (at <= scene.Until - _rest)
        {
            script.Acts.Add(new Act(at, desk => Fitting.Adopt(desk, scene.Start, at, "first days of steady running", scene.Staff.Engineer)));
        }
    }
}
