namespace Logbook.Demo.Line;

/// <summary>A storage tank that mixes what it holds.</summary>
/// <param name="capacity">m3.</param>
/// <param name="level">Full to this share at the start, and steered back to it.</param>
internal sealed class LiquorTank(double capacity, double level, Liquor start)
{
    public double Volume { get; private set; } = capacity * level;

    public Liquor Content { get; private set; } = start;

    /// <summary>%.</summary>
    public double Level => 100 * Volume / capacity;

    /// <summary>Flow that a person would set to bring the level back over half a day, m3/h.</summary>
    public double Restore => ((capacity * level) - Volume) / 12;

    public void Step(Liquor inflow, double flowIn, double flowOut, double dtHours)
    {
        var came = flowIn * dtHours;
        Content = ((Content * Volume) + (inflow * came)) * (1 / (Volume + came));
        Volume += came - (flowOut * dtHours);
    }
}
