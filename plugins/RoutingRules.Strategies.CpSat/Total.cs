using Google.OrTools.Sat;

namespace RoutingRules.Strategies.CpSat;

/// <summary>A sum of variables with factors and a constant.</summary>
internal sealed class Total
{
    private readonly List<IntVar> variables = [];
    private readonly List<long> factors = [];

    public long Constant { get; set; }

    public Total Add(IntVar variable, long factor = 1)
    {
        if (factor != 0)
        {
            variables.Add(variable);
            factors.Add(factor);
        }

        return this;
    }

    public Total Add(IEnumerable<IntVar> some, long factor = 1)
    {
        foreach (var variable in some)
        {
            Add(variable, factor);
        }

        return this;
    }

    public Total Plus(long constant)
    {
        Constant += constant;
        return this;
    }

    public long ValueIn(long[] solution)
    {
        var value = Constant;
        for (var i = 0; i < variables.Count; i++)
        {
            value += factors[i] * solution[variables[i].Index];
        }

        return value;
    }

    public LinearExpr ToExpression() => LinearExpr.WeightedSum(variables, factors) + Constant;

    public void AtMost(CpModel model, long most) => model.AddLinearConstraint(LinearExpr.WeightedSum(variables, factors), long.MinValue / 4, most - Constant);

    public void AtLeast(CpModel model, long least) =>
        model.AddLinearConstraint(LinearExpr.WeightedSum(variables, factors), least - Constant, long.MaxValue / 4);
}
