namespace CrossExamination.Tests.Plants;

/// <summary>
/// As a real line makes it hard: white liquor is what was limed two hours before, titrations and lime come less often than the
/// rest and in turn, each at its own hour, constants were typed once, methods are biased and wander by as much as their declared
/// uncertainty, the instruments' uncertainties are misdeclared by a third either way, errors have heavy tails, equipment stops,
/// mud goes into store.
/// </summary>
internal sealed class HardPlant : Plant
{
    private const int Lag = 2;

    private readonly Dice _dice;
    private readonly int _every;
    private int _rounds;
    private readonly Wander[] _process;
    private readonly Wander[] _methods;
    private readonly double[] _bias;
    private readonly double[] _noise;
    private readonly Queue<Process> _limed;
    private int _mudFilterOut;

    /// <param name="seed">Of its luck.</param>
    /// <param name="every">Hours between rounds: 1, titrations in turn, or 2, liquor of both kinds titrated in each.</param>
    public HardPlant(int seed, int every = 2)
    {
        _every = every;
        _dice = new Dice(seed);
        double[] spreads = [2.5, .008, .008, 7, 1.0, .8, 1.0, .008, 1.0, .9, 10, 20];
        double[] memories = [.96, .985, .97, .95, .93, .93, .98, .93, .95, .93, .93, .93];
        _process = [.. spreads.Select((s, i) => new Wander(_dice, s, memories[i]))];
        _methods = [.. new[] { 1.2, .003, .006, .02, .5, .012, .4, 6 }.Select(s => new Wander(_dice, s, .985))];
        _bias = [.. new[] { 4, .004, .006, .03, 1.5, .02, .5, 10 }.Select(s => s * _dice.Normal())];
        _noise = [.. Declared.Select(u => u * Math.Exp(0.3 * _dice.Normal()))];
        _limed = new Queue<Process>();
    }

    private HardPlant(HardPlant other, int seed)
    {
        _dice = new Dice(seed);
        Hour = other.Hour;
        _process = [.. other._process.Select(w => w.With(_dice))];
        _methods = [.. other._methods.Select(w => w.With(_dice))];
        (_bias, _noise, _mudFilterOut, _every, _rounds) = (other._bias, other._noise, other._mudFilterOut, other._every, other._rounds);
        _limed = new Queue<Process>(other._limed);
    }

    public override Plant Branch(int seed) => new HardPlant(this, seed);

    public override double[] Next(Func<Process, Process>? change = null)
    {
        _rounds++;
        for (var hour = 1; hour <= _every; hour++)
        {
            Hour++;
            var usual = Drift(Usual(new Process()));
            _limed.Enqueue(change?.Invoke(usual) ?? usual);
        }

        while (_limed.Count > Lag + 1)
        {
            _limed.Dequeue();
        }

        var now = _limed.Last();
        var then = _limed.Peek() with { Dilution = now.Dilution, SulphideLost = now.SulphideLost };
        var shown = Instruments.Show(now, then);
        return Taken([.. shown.Select((v, i) => v + (_noise[i] * _dice.Heavy()))]);
    }

    /// <summary>
    /// Rounds every two hours hold all titrations, hourly ones white and green liquor in turn; weak wash and lime are analysed every
    /// four hours in turn; no mud while its filter is out.
    /// </summary>
    private double[] Taken(double[] read)
    {
        Skip(read, _every == 1 && Hour % 2 != 0, Tag.WhiteA, Tag.WhiteB, Tag.WhiteC);
        Skip(read, _every == 1 && Hour % 2 == 0, Tag.GreenA, Tag.GreenB, Tag.GreenC);
        Skip(read, Hour % 4 != 0, Tag.WeakWash);
        Skip(read, Hour % 4 != 2, Tag.LimeCao);
        _mudFilterOut = _mudFilterOut > 0 ? _mudFilterOut - 1 : _dice.Uniform() < 0.008 * _every ? 4 / _every : 0;
        Skip(read, _mudFilterOut > 0, Tag.MudFlow, Tag.MudDensity);
        return read;
    }

    private static void Skip(double[] read, bool skip, params Tag[] tags)
    {
        foreach (var tag in skip ? tags : [])
        {
            read[(int)tag] = double.NaN;
        }
    }

    private Process Usual(Process p)
    {
        var w = _process.Select(x => x.Next()).ToArray();
        return p with
        {
            Strength = p.Strength + w[0],
            Sulphidity = p.Sulphidity + w[1],
            GreenCausticity = p.GreenCausticity + w[2],
            Flow = p.Flow + w[3] + (w[0] * -1.5),
            GreenTemperature = p.GreenTemperature + w[4],
            TankTemperature = p.TankTemperature + w[4] + w[5],
            Available = p.Available + w[6],
            Causticity = p.Causticity + w[7] - (w[0] * .001),
            WeakWash = p.WeakWash + w[8],
            WeakWashTemperature = p.WeakWashTemperature + w[9],
            MudDensity = p.MudDensity + w[10],
            Grits = p.Grits + w[11],
        };
    }

    private Process Drift(Process p)
    {
        var m = _methods.Select((x, i) => x.Next() + _bias[i]).ToArray();
        return p with
        {
            DeadLoad = p.DeadLoad + m[0],
            SulphideLost = m[1],
            Dilution = Math.Max(-.01, m[2]),
            ScrewFill = 1 + m[3],
            Evaporation = p.Evaporation + m[4],
            ToStore = m[5],
            FreeLime = Math.Max(-1, m[6]),
            LimeTemperature = p.LimeTemperature + m[7],
        };
    }
}
