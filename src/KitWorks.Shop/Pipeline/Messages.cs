using KitWorks.Geometry;
using MediatR;

namespace KitWorks.Shop.Pipeline;

/// <summary>Changes what is remembered, all of it or nothing. A refusal changes nothing.</summary>
public interface ICommand<T> : IRequest<Outcome<T>>;

/// <summary>
/// A command that has long work to do first, such as making a kit: its handler works while nobody waits for the database,
/// and then sends the one <see cref="ICommand{T}"/> that changes what is remembered and gives the answer.
/// </summary>
public interface IPreparedCommand<T> : IRequest<Outcome<T>>;

/// <summary>Reads what is remembered.</summary>
public interface IQuery<T> : IRequest<Outcome<T>>;
