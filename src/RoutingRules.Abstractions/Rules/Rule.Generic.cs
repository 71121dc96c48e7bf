namespace RoutingRules.Rules;

/// <summary>A rule over one kind of subject.</summary>
/// <typeparam name="TSubject">
/// <see cref="Resolving.ResolvedShow"/> (the whole document, one subject), <see cref="Resolving.DeviceNode"/>, <see cref="Resolving.FeedNode"/>,
/// <see cref="Resolving.LineNode"/>, <see cref="Resolving.StreamNode"/>, <see cref="Resolving.RouteNode"/>, <see cref="Resolving.CableNode"/>,
/// <see cref="Resolving.LinkNode"/> or <see cref="OutputSubject"/> (each output of the rig).
/// </typeparam>
public abstract class Rule<TSubject> : Rule
{
    /// <inheritdoc/>
    public sealed override Type SubjectType => typeof(TSubject);

    /// <summary>Looks at one subject. Reports through the context; saying nothing is a pass.</summary>
    /// <param name="context">The door to the show; valid during the call only.</param>
    /// <param name="subject">The subject.</param>
    public abstract void Check(RuleContext context, TSubject subject);
}
