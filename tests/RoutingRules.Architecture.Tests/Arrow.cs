namespace RoutingRules.Architecture.Tests;

/// <summary>A type that uses another, nested types counted with those around them.</summary>
/// <param name="From">Full name of the type that uses.</param>
/// <param name="To">Full name of the type that is used.</param>
/// <param name="Assembly">The assembly of the used type.</param>
internal readonly record struct Arrow(string From, string To, string Assembly)
{
    public override string ToString() => $"{From} uses {To}";

    /// <summary>The namespace of a full name.</summary>
    public static string NamespaceOf(string type) => type.LastIndexOf('.') is > 0 and var at ? type[..at] : "";
}
