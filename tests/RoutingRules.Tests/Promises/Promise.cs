using System.Text;
using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Signal;

namespace RoutingRules.Tests.Promises;

/// <summary>Runs a promise over generated values; a broken one is shrunk and shown with what is wrong and the show as JSON.</summary>
internal static class Promise
{
    /// <summary>How many generated cases each promise is tried on.</summary>
    public const int Cases = 1000;

    public static RoutingEngine Engine { get; } = RoutingEngine.CreateBuilder().Build();

    /// <summary>A promise about shows.</summary>
    /// <param name="shows">The shows.</param>
    /// <param name="broken">Says what is wrong, or null when the promise is kept.</param>
    public static Property Of(Arbitrary<Show> shows, Func<Show, string?> broken) => Of(shows, show => show, broken);

    /// <summary>A promise about values that hold a show.</summary>
    public static Property Of<T>(Arbitrary<T> values, Func<T, Show> show, Func<T, string?> broken) =>
        Prop.ForAll(
            values,
            value =>
            {
                var problem = Problem(broken, value);
                return problem is null ? true.ToProperty() : false.Label($"{problem}\n{Encoding.UTF8.GetString(ShowWriter.ToUtf8(show(value)))}");
            }
        );

    /// <summary>Resolves any show, also those that no document can say and the engine would refuse.</summary>
    public static ResolvedShow Resolve(Show show) => ShowResolver.Resolve(show, Engine.Profiles);

    private static string? Problem<T>(Func<T, string?> broken, T value)
    {
        try
        {
            return broken(value);
        }
#pragma warning disable CA1031 // Whatever is thrown breaks the promise; it is shown with its show.
        catch (Exception thrown)
#pragma warning restore CA1031
        {
            return thrown.ToString();
        }
    }
}
