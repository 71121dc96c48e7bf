namespace RoutingRules.Model;

/// <summary>An intention: this stage source shall reach these console channels.</summary>
public sealed record Line
{
    /// <summary>The id that demands and findings name.</summary>
    public required Id<Line> Id { get; init; }

    /// <summary>What people call the source.</summary>
    public string? Name { get; init; }

    /// <summary>Microphone or line level.</summary>
    public required LineKind Kind { get; init; }

    /// <summary>Whether it wants phantom power.</summary>
    public PhantomNeed Phantom { get; init; }

    /// <summary>1 for mono, 2 for a pair (left then right).</summary>
    public int Width { get; init; } = 1;

    /// <summary>Where it enters.</summary>
    public required LineOrigin From { get; init; }

    /// <summary>The sinks it shall reach, each as wide as the line.</summary>
    public ValueList<PointRange> To { get; init; }

    /// <summary>What is dropped last when not everything fits.</summary>
    public Priority Priority { get; init; } = Priority.Normal;

    /// <summary>The wanted number of the first input in its group.</summary>
    public int? Preferred { get; init; }

    /// <summary>Whether an existing placement is hard; null means false.</summary>
    public bool? Hold { get; init; }

    /// <summary>Lines of one group belong on one device.</summary>
    public string? Group { get; init; }

    /// <summary>Microphone, direct box or other equipment.</summary>
    public string? Equipment { get; init; }

    /// <summary>The stand.</summary>
    public string? Stand { get; init; }

    /// <summary>Where on stage.</summary>
    public string? Position { get; init; }

    /// <summary>Who brings it.</summary>
    public string? SuppliedBy { get; init; }

    /// <summary>Anything a person should know.</summary>
    public string? Notes { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
