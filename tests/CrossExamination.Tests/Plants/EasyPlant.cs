namespace CrossExamination.Tests.Plants;

/// <summary>Everything read each hour at once, no lag, declared uncertainties true, methods with small drifts.</summary>
internal sealed class EasyPlant : Plant
{
    private readonly Dice _dice;
    private readonly Wander[] _process;
    private readonly Wander[] _methods;

    public EasyPlant(int seed)
    {
        _dice = new Dice(seed);
        double[] spreads = [2.0, .007, .007, 6, .8, .6, .8, .007, .8, .8, 8, 18];
        double[] memories = [.95, .98, .95, .93, .9, .9, .97, .9, .93, .9, .9, .9];
        _process = [.. spreads.Select((s, i) => new Wander(_dice, s, memories[i]))];
        _methods = [.. new[] { .6, .0015, .002, .008, .5, .005, .2 }.Select(s => new Wander(_dice, s, .97))];
    }

    private EasyPlant(EasyPlant other, int seed)
    {
        _dice = new Dice(seed);
        Hour = other.Hour;
        _process = [.. other._process.Select(w => w.With(_dice))];
        _methods = [.. other._methods.Select(w => w.With(_dice))];
    }

    public override Plant Branch(int seed) => new EasyPlant(this, seed);

    public override double[] Next(Func<Process, Process>? change = null)
    {
        Hour++;
        var process = Drift(Usual(new Process()));
        process = change?.Invoke(process) ?? process;
        return [.. Instruments.Show(process, process).Select((v, i) => v + (Declared[i] * _dice.Normal()))];
    }

    private Process Usual(Process p)
    {
        var w = _process.Select(x => x.Next()).ToArray();
        return p with
        {
            Strength = p.Strength + w[0],
            Sulphidity = p.Sulphidity + w[1],
            GreenCausticity = p.GreenCausticity + w[2],
            Flow = p.Flow + w[3],
            GreenTemperature = p.GreenTemperature + w[4],
            TankTemperature = p.TankTemperature + w[5],
            Available = p.Available + w[6],
            Causticity = p.Causticity + w[7],
            WeakWash = p.WeakWash + w[8],
            WeakWashTemperature = p.WeakWashTemperature + w[9],
            MudDensity = p.MudDensity + w[10],
            Grits = p.Grits + w[11],
        };
    }

    private Process Drift(Process p)
    {
        var m = _methods.Select(x => x.Next()).ToArray();
        return p with
        {
            DeadLoad = p.DeadLoad + m[0],
            SulphideLost = m[1],
            Dilution = m[2],
            ScrewFill = 1 + m[3],
            Evaporation = p.Evaporation + m[4],
            ToStore = m[5],
            FreeLime = m[6],
        };
    }
}
