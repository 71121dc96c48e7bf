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

    /// <summary>Looks at one subject. Reports through the context; reporting nothing is a pass, if there was something to look at.</summary>
    /// <remarks>
    /// A rule over the whole show says what it looked at with <see cref="RuleContext.LookedAt"/>. Any other subject counts as looked at, unless the rule calls
    /// <c>context.LookedAt(0)</c> because it has nothing to judge there. What the rule throws leaves this one subject undecided and the others as they are.
    /// </remarks>
    /// <param name="context">The door to the show; valid during the call only.</param>
    /// <param name="subject">The subject.</param>
    public abstract void Check(RuleContext context, TSubject subject);
}
