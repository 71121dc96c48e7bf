using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Reading;

/// <summary>What came of reading a document: the model, or what is wrong with the text, or both.</summary>
/// <typeparam name="T">The model type.</typeparam>
public sealed record ReadResult<T>
    where T : class
{
    /// <summary>The model; null when the text could not be read as a whole. Bad parts are left out of it.</summary>
    public T? Value { get; init; }

    /// <summary>Every problem found, in document order.</summary>
    public ValueList<Finding> Findings { get; init; }

    /// <summary>True when there is a model and no finding is an error, so that it holds all the document says.</summary>
    public bool IsUsable
    {
        get
        {
            foreach (var finding in Findings)
            {
                if (finding.Severity == Severity.Error)
                {
                    return false;
                }
            }

            return Value is not null;
        }
    }
}
