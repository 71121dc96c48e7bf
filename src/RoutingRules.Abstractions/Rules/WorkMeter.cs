namespace RoutingRules.Rules;

/// <summary>Counts what a rule looks at and stops it when its budget is used up.</summary>
internal sealed class WorkMeter
{
    private long budget = long.MaxValue;

    /// <summary>Units used since the last <see cref="Start"/>.</summary>
    public long Used { get; private set; }

    /// <summary>Units used altogether.</summary>
    public long Total { get; private set; }

    /// <summary>Counts from 0 again.</summary>
    public void Reset()
    {
        Used = 0;
        Total = 0;
    }

    public void Start(long limit)
    {
        budget = limit;
        Used = 0;
    }

    public void Add(long units)
    {
        Used += units;
        Total += units;
        if (Used > budget)
        {
            throw new WorkBudgetException();
        }
    }
}
