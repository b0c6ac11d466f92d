using KitWorks.Geometry;
using MediatR;

namespace KitWorks.Shop.Pipeline;

/// <summary>Changes what is remembered, all of it or nothing. A refusal changes nothing.</summary>
public interface ICommand<T> : IRequest<Outcome<T>>;

/// <summary>Reads what is remembered.</summary>
public interface IQuery<T> : IRequest<Outcome<T>>;
