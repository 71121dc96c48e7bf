namespace RoutingRules.Assignment;

/// <summary>A strategy proposed something that breaks a rule: a mistake in the strategy.</summary>
public sealed class InvalidProposalException : InvalidOperationException
{
    /// <summary>Says what is wrong.</summary>
    /// <param name="strategy">The name of the strategy.</param>
    /// <param name="fault">What is wrong with the proposal, as a sentence.</param>
    public InvalidProposalException(string strategy, string fault)
        : base($"The strategy '{strategy}' proposed something invalid. {fault}")
    {
        Strategy = strategy;
        Fault = fault;
    }

    /// <summary>The name of the strategy.</summary>
    public string Strategy { get; }

    /// <summary>What is wrong with the proposal.</summary>
    public string Fault { get; }
}
